/** Writes the JSON Schema of the movement file beside the code that it comes from: `npm run schema`. */
import { writeFileSync } from 'node:fs';
import { jsonSchemaText } from '../solver/movement/jsonSchema.ts';

writeFileSync(new URL('../solver/movement/movement.schema.json', import.meta.url), jsonSchemaText());
