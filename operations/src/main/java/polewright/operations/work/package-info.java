/** What tonight is for: presets, a plain limit, and visual observations and imaging runs of one's own. */
@NullMarked
package polewright.operations.work;

import org.jspecify.annotations.NullMarked;
