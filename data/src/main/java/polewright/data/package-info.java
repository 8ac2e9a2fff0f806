/**
 * Builders of the tables that the sky bundles, each from packages that it names; not part of the shipped jar.
 *
 * <p>Each is a program of its own: given the unpacked package and the folder to write to, it writes the same bytes every
 * time.
 */
@NullMarked
package polewright.data;

import org.jspecify.annotations.NullMarked;
