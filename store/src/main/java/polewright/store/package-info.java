/** The log: one SQLite file, appended to and never rewritten. */
@NullMarked
package polewright.store;

import org.jspecify.annotations.NullMarked;
