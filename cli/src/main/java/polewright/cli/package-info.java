/** The command line: one class per command. */
@NullMarked
package polewright.cli;

import org.jspecify.annotations.NullMarked;
