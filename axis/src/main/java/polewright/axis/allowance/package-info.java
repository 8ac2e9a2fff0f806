/** How far off the axis may be for tonight's work. */
@NullMarked
package polewright.axis.allowance;

import org.jspecify.annotations.NullMarked;
