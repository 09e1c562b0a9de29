/** What people read, in their language: words from resource bundles, numbers by locale. Never used for tables, which have one form. */
package org.boardtopit.wording;
