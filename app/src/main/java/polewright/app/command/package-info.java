/** One class a command. */
@NullMarked
package polewright.app.command;

import org.jspecify.annotations.NullMarked;
