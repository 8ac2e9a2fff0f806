/** Results as JSON, with the unit in each key. */
@NullMarked
package polewright.app.json;

import org.jspecify.annotations.NullMarked;
