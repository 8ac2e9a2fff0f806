/** All actions of the other packages in one table: commands, forms and the names used in messages come from it. */
@NullMarked
package polewright.operations.table;

import org.jspecify.annotations.NullMarked;
