/**
 * Visual nights simulated independently of the code under test. {@link polewright.bench.independent.truth} holds the
 * truth and imports nothing of Polewright's; here a person logs what was seen there, as events, and does what the
 * advice says.
 */
@NullMarked
package polewright.bench.independent;

import org.jspecify.annotations.NullMarked;
