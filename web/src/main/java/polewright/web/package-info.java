/**
 * The web pages at the telescope, for a phone in one hand and a laptop under the tarpaulin.
 * <pre>
 *   browser ──POST──▶ form ──argv──▶ Commands (the same as are typed) ──▶ log
 *   log ──▶ NightSession ──▶ view ──JTE──▶ browser
 *   log ──LogWatch──▶ server-sent event ──▶ every browser reloads its page
 *   folder ──WatchedFrames──▶ log, and a server-sent event ──▶ every browser reloads the frame
 * </pre>
 * A page can do nothing that a command cannot: a posted form becomes the words of a command, which runs in this
 * process and writes to the same log, under a key that makes a repeated submission harmless.
 */
@NullMarked
package polewright.web;

import org.jspecify.annotations.NullMarked;
