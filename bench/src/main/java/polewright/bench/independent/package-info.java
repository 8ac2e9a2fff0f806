/**
 * Nights by eye simulated apart from the code that they test. {@link polewright.bench.independent.truth} holds what is true and
 * imports nothing of Polewright's; here a person writes down what was seen there, as events, and does what the advice says.
 */
@NullMarked
package polewright.bench.independent;

import org.jspecify.annotations.NullMarked;
