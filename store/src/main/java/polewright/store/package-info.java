/** The event log: an append-only SQLite file, checked when it is opened, copied before each night. */
@NullMarked
package polewright.store;

import org.jspecify.annotations.NullMarked;
