/**
 * Actions at the wedge and entries about the night, other than sightings.
 *
 * <p>{@link polewright.operations.night.NightActions} lists the actions.
 */
@NullMarked
package polewright.operations.night;

import org.jspecify.annotations.NullMarked;
