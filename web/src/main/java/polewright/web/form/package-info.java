/**
 * The commands as forms: which words a form types, and which fields fill them. Nothing here runs anything.
 *
 * <p>{@link polewright.web.form.CommandForms} is the list of all of them.
 */
@NullMarked
package polewright.web.form;

import org.jspecify.annotations.NullMarked;
