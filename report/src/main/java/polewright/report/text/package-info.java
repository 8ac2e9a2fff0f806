/** Results in words for a tired person in the dark: figure and verb first, short lines. */
@NullMarked
package polewright.report.text;

import org.jspecify.annotations.NullMarked;
