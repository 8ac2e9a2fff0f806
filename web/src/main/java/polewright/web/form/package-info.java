/**
 * The commands as forms: which command a form runs, and which fields fill in its arguments. Nothing here runs
 * anything.
 *
 * <p>{@link polewright.web.form.CommandForms} lists all of them.
 */
@NullMarked
package polewright.web.form;

import org.jspecify.annotations.NullMarked;
