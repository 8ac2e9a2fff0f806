/** Identifies the stars of a frame: patterns of neighbours looked up in the atlas, then judged by odds. */
@NullMarked
package polewright.image.match;

import org.jspecify.annotations.NullMarked;
