/** Instants and the time scales that the sky needs: UTC, TAI, TT, UT1. */
@NullMarked
package polewright.sky.time;

import org.jspecify.annotations.NullMarked;
