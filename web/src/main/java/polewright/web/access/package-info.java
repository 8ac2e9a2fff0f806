/**
 * Access control: which devices are admitted.
 * <pre>
 *   terminal ──code──▶ person ──POST /pair──▶ PairingCode ──▶ PairedDevices ──cookie──▶ device
 *   request ──▶ Admission.of ──▶ admitted | must pair | refused with a sentence
 * </pre>
 * The browser on this machine is admitted without pairing. Every other device is paired once, with a code that is shown
 * only in the terminal. A page from another site can neither write here nor read by using another host name.
 */
@NullMarked
package polewright.web.access;

import org.jspecify.annotations.NullMarked;
