import { searchPage } from './search-page.ts';

searchPage(document);
