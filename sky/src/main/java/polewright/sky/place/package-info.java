/** Sites, weather, and positions on the sky as distinct types, one per frame. */
@NullMarked
package polewright.sky.place;

import org.jspecify.annotations.NullMarked;
