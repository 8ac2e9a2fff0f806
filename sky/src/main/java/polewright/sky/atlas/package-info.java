/** Star atlas, named stars, deep-sky list and constellations, read from tables bundled in the jar. */
@NullMarked
package polewright.sky.atlas;

import org.jspecify.annotations.NullMarked;
