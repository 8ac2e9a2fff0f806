/**
 * Coverage-guided fuzzing of everything that reads bytes from outside. {@code docs/fuzzing.md} describes it.
 * <pre>
 *   seeds, found inputs, mutations ──▶ target ──▶ execution ──▶ nothing, or a finding
 *                                   (what is called)  (how long, how much memory)
 * </pre>
 *
 * <p>{@link polewright.fuzz.FrameFuzzTest} covers the formats of frames, {@link polewright.fuzz.TextFuzzTest} those
 * of text.
 */
@NullMarked
package polewright.fuzz;

import org.jspecify.annotations.NullMarked;
