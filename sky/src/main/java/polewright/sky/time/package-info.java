/** Instants and the time scales of positional astronomy: UTC, TAI, TT, UT1. */
@NullMarked
package polewright.sky.time;

import org.jspecify.annotations.NullMarked;
