/**
 * The web pages at the telescope, for a phone in one hand and a laptop under the tarpaulin.
 * <pre>
 *   browser ──POST──▶ form ──Entries──▶ action of the table ──▶ log, practice or paired devices
 *   log ──▶ NightSession ──▶ view ──JTE──▶ browser
 *   log ──LogWatch──▶ server-sent event ──▶ every browser reloads its page
 *   folder ──WatchedFrames──▶ log, and a server-sent event ──▶ every browser reloads the frame
 * </pre>
 * A page can do nothing that a command cannot: both carry out the same actions of one table. A key makes a repeated
 * submission harmless.
 */
@NullMarked
package polewright.web;

import org.jspecify.annotations.NullMarked;
