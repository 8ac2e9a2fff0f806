/** What to do next, from the fix and the allowance. */
@NullMarked
package polewright.axis.advice;

import org.jspecify.annotations.NullMarked;
