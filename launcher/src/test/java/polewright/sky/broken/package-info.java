/** Classes that break the rules of the house on purpose, so that the rules are seen to catch them. */
@NullMarked
package polewright.sky.broken;

import org.jspecify.annotations.NullMarked;
