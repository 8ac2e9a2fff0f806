/** The axis estimated from everything that happened tonight. */
@NullMarked
package polewright.axis.fix;

import org.jspecify.annotations.NullMarked;
