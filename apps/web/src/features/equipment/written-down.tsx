import { useEquipmentText } from './words.ts';

/** What was written down without a signal: it needs nobody any more. */
export function WrittenDown() {
  const words = useEquipmentText();
  return (
    <>
      <h1>{words.writtenDown}</h1>
      <p>{words.writtenWords}</p>
    </>
  );
}
