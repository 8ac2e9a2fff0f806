/** Writing files safely, and why a file could not be written, in words for the person at the telescope. */
@NullMarked
package polewright.store.disk;

import org.jspecify.annotations.NullMarked;
