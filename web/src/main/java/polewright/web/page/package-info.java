/** One class for each page: what it shows of a night, as sections from top to bottom. */
@NullMarked
package polewright.web.page;

import org.jspecify.annotations.NullMarked;
