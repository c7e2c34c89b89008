// The first page: keeps the token that the program gave for the pages behind the doors.

import { keepToken } from './asking.js';

keepToken();
