/** The night as the pages see it: its log, the followed camera's frames, and the outcome of a submitted form. */
@NullMarked
package polewright.web.session;

import org.jspecify.annotations.NullMarked;
