/**
 * The paired phones and laptops: a name, a day and the digest of a secret for each, in one file that only its owner
 * may read. Only the device keeps the secret itself.
 */
@NullMarked
package polewright.operations.device;

import org.jspecify.annotations.NullMarked;
