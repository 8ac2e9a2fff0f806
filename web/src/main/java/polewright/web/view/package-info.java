/** What the templates show: plain records, already in words and pictures. */
@NullMarked
package polewright.web.view;

import org.jspecify.annotations.NullMarked;
