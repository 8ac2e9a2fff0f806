/**
 * The truth of a simulated night: the sky, the wedge, and what a person sees of both. Written independently of the
 * code under test, with plain vectors and SOFA only: nothing here imports anything of Polewright's, so that no error
 * can be shared.
 *
 * <p>Directions are {@code double[3]} of east, north and up, of unit length. Angles are radians unless their name
 * says otherwise.
 */
@NullMarked
package polewright.bench.independent.truth;

import org.jspecify.annotations.NullMarked;
