/**
 * Access control: which devices are admitted.
 * <pre>
 *   terminal ──code──▶ person ──POST /pair──▶ PairingCode ──▶ PairedDevices ──cookie──▶ device
 *   request ──▶ Admission.of ──▶ admitted | must pair | refused with a sentence
 * </pre>
 * The browser on this machine is admitted as it is. Every other device shows once that its owner can read the
 * terminal. A page from another site can neither write here nor, under a borrowed name, read.
 */
@NullMarked
package polewright.web.access;

import org.jspecify.annotations.NullMarked;
