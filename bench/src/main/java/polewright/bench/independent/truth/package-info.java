/**
 * What is true of a simulated night: the sky, the wedge, and what a person sees of both. Written apart from the code under
 * test, on plain vectors and SOFA alone: nothing here imports anything of Polewright's, so that no error can be shared.
 *
 * <p>Directions are {@code double[3]} of east, north and up, of unit length. Angles are radians unless their name says
 * otherwise.
 */
@NullMarked
package polewright.bench.independent.truth;

import org.jspecify.annotations.NullMarked;
