import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { thingName } from '../storehouse/schema.ts';

const contact = z.string().trim().max(500, 'A contact has 500 characters at most.');

export const supplierWish = z.strictObject({ name: thingName, contact: contact.default('') });
export type SupplierWish = z.infer<typeof supplierWish>;

export const supplierEdit = z.strictObject({ version: z.int().positive(), name: thingName, contact });
export type SupplierEdit = z.infer<typeof supplierEdit>;

export const supplierQuery = pageQuery;
