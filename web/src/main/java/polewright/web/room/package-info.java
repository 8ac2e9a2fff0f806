/** One class for each page: what it shows of a night, as sections from top to bottom. */
@NullMarked
package polewright.web.room;

import org.jspecify.annotations.NullMarked;
