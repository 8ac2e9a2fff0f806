/** Results as JSON, with the unit in each key. */
@NullMarked
package polewright.report.json;

import org.jspecify.annotations.NullMarked;
