/** What can happen in a night, as a sealed type. */
@NullMarked
package polewright.session.event;

import org.jspecify.annotations.NullMarked;
