/**
 * The groups that a guideline ration is counted in; a food outside them is `other` and counts for energy alone.
 * Units: none. Errors: none.
 */
export type FoodGroupCode = 'grains' | 'legumes' | 'dried-milk' | 'fats' | 'sugars' | 'salt' | 'other';
