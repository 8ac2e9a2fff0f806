/** Measurements, each a separate program with a script next to this module's sources; nothing here is shipped. */
@NullMarked
package polewright.bench;

import org.jspecify.annotations.NullMarked;
