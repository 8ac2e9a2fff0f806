/** The log: one SQLite file, appended to and never rewritten. */
@NullMarked
package polewright.night.log;

import org.jspecify.annotations.NullMarked;
