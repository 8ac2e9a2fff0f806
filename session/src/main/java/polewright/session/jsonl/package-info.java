/** Events as JSON Lines, one event per line; the format is described in docs/events.md. */
@NullMarked
package polewright.session.jsonl;

import org.jspecify.annotations.NullMarked;
