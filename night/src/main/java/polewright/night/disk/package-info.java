/** Why a file could not be written, in words for the person at the telescope. */
@NullMarked
package polewright.night.disk;

import org.jspecify.annotations.NullMarked;
