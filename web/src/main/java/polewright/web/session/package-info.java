/**
 * The night as the pages see it: its log, the frames of the camera that is followed, and what came of a form that was sent.
 */
@NullMarked
package polewright.web.session;

import org.jspecify.annotations.NullMarked;
