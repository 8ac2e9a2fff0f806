package polewright.operations.device;

import java.time.Instant;
import java.time.LocalDate;

/**
 * One paired device.
 *
 * @param id short and unique in the file
 * @param name what its owner calls it
 * @param paired when
 * @param lastSeen the last day on which it sent a request, UTC
 * @param tokenDigest SHA-256 of its token, hexadecimal
 */
public record PairedDevice(String id, String name, Instant paired, LocalDate lastSeen, String tokenDigest) {
    PairedDevice seen(LocalDate day) {
        return new PairedDevice(id, name, paired, day, tokenDigest);
    }
}
