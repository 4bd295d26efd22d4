/** Run by connection.test.ts in a process of its own: renames the seat, as somebody would who loaded revision 1. */
import { openStorage } from '@/lib/storage';
import { AT, changeEdit, changeOf, seat } from './sample';

const [url, name = ''] = process.argv.slice(2);
const storage = await openStorage(url);
console.log('opened');
const result = await storage.applyChange('s1', changeOf(`Renamed to ${name}`, [changeEdit(seat, { name })]), AT);
console.log(result.ok ? 'saved' : result.error.map(({ code, message }) => `${code}\n${message}`).join('\n'));
await storage.close();
