/**
 * The tool at the telescope: pages for the phone in one hand and the laptop under the tarpaulin.
 *
 * <pre>
 *   browser ──POST──▶ form ──argv──▶ Commands (the same as are typed) ──▶ log
 *   log ──▶ NightDesk ──▶ view ──JTE──▶ browser
 *   log ──LogWatch──▶ server-sent event ──▶ every browser asks for its page anew
 *   folder ──WatchedFrames──▶ log, and a server-sent event ──▶ every browser asks for the frame anew
 * </pre>
 *
 * A page knows nothing that a command does not: what is posted becomes the words of a command, which runs in this process
 * and writes to the same log, under a key that makes sending it twice harmless.
 */
@NullMarked
package polewright.web;

import org.jspecify.annotations.NullMarked;
