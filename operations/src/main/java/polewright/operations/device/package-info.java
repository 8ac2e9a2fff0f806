/**
 * The phones and laptops that were let in: a name, a day and the digest of a secret each, in one file that only its owner
 * may read. The secret itself is kept by the device alone.
 */
@NullMarked
package polewright.operations.device;

import org.jspecify.annotations.NullMarked;
