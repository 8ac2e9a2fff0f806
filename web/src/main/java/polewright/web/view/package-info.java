/** The data shown by the templates: plain records, already worded and drawn. */
@NullMarked
package polewright.web.view;

import org.jspecify.annotations.NullMarked;
