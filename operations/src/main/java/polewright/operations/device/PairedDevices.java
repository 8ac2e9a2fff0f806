package polewright.operations.device;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import polewright.operations.OperationFailed;
import polewright.store.disk.NotWritten;
import polewright.store.disk.WholeFile;

/**
 * The file of paired devices. It is read at each check, so that a device revoked by one process is no longer admitted
 * by another.
 */
public final class PairedDevices {
    /** The file's name in the data folder. */
    public static final String FILE = "devices.json";

    /** The name that revokes every paired device. */
    public static final String ALL = "all";

    private static final int TOKEN_BYTES = 32;
    private static final int LONGEST_NAME = 40;

    private final Path file;
    private final SecureRandom random = new SecureRandom();

    public PairedDevices(Path dataFolder) {
        file = dataFolder.resolve(FILE);
    }

    /** Loaded only when there is a file to read: the first page comes sooner without one. */
    private static final class Json {
        private static final ObjectMapper MAPPER = new ObjectMapper();
    }

    /** A newly paired device and its token, which is handed out only this once. */
    public record Welcome(PairedDevice device, String token) {}

    /**
     * The paired devices.
     *
     * @throws OperationFailed if the file is damaged: then no device is admitted
     */
    public synchronized List<PairedDevice> all() {
        if (!Files.exists(file)) {
            return List.of();
        }
        try {
            JsonNode devices = Json.MAPPER
                    .readTree(Files.readString(file, StandardCharsets.UTF_8))
                    .path("devices");
            if (!devices.isArray()) {
                throw damaged();
            }
            List<PairedDevice> read = new ArrayList<>();
            for (JsonNode device : devices) {
                read.add(device(device));
            }
            return List.copyOf(read);
        } catch (JsonProcessingException | DateTimeException e) {
            throw damaged();
        } catch (IOException e) {
            throw new OperationFailed("The list of paired devices cannot be read: " + file
                    + ". No device is admitted until you can read that file.");
        }
    }

    /** Pairs a device. */
    public synchronized Welcome pair(String name, Instant now) {
        byte[] secret = new byte[TOKEN_BYTES];
        random.nextBytes(secret);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
        List<PairedDevice> devices = new ArrayList<>(all());
        String id = token(4);
        String clean = name.replaceAll("\\p{C}", "").strip();
        String kept = clean.isEmpty() ? "a device" : clean.substring(0, Math.min(LONGEST_NAME, clean.length()));
        PairedDevice device =
                new PairedDevice(id, kept, now, now.atZone(ZoneOffset.UTC).toLocalDate(), digest(token));
        devices.add(device);
        write(devices);
        return new Welcome(device, token);
    }

    /** The device with this token; the day is recorded as its last. */
    public synchronized Optional<PairedDevice> holderOf(String token, Instant now) {
        byte[] asked = digest(token).getBytes(StandardCharsets.US_ASCII);
        List<PairedDevice> devices = new ArrayList<>(all());
        for (int i = 0; i < devices.size(); i++) {
            PairedDevice device = devices.get(i);
            if (MessageDigest.isEqual(asked, device.tokenDigest().getBytes(StandardCharsets.US_ASCII))) {
                LocalDate today = now.atZone(ZoneOffset.UTC).toLocalDate();
                if (!today.equals(device.lastSeen())) {
                    devices.set(i, device.seen(today));
                    write(devices);
                }
                return Optional.of(devices.get(i));
            }
        }
        return Optional.empty();
    }

    /**
     * Revokes these devices and returns them.
     *
     * @param name a name, an id, or {@link #ALL}, which also accepts an empty list
     * @throws OperationFailed if no device is called that
     */
    public synchronized List<PairedDevice> revoke(String name) {
        if (name.equals(ALL)) {
            return revokeAll();
        }
        List<PairedDevice> gone = revoke(
                device -> device.name().equalsIgnoreCase(name) || device.id().equals(name));
        if (gone.isEmpty()) {
            throw new OperationFailed(
                    "no paired device is called '" + name + "'. Take a name, or its first word, from the list.");
        }
        return gone;
    }

    /** Revokes all devices, even if the file is damaged. */
    public synchronized List<PairedDevice> revokeAll() {
        List<PairedDevice> gone;
        try {
            gone = all();
        } catch (OperationFailed damaged) {
            gone = List.of();
        }
        write(List.of());
        return gone;
    }

    private List<PairedDevice> revoke(Predicate<PairedDevice> which) {
        List<PairedDevice> devices = all();
        List<PairedDevice> gone = devices.stream().filter(which).toList();
        if (!gone.isEmpty()) {
            write(devices.stream().filter(which.negate()).toList());
        }
        return gone;
    }

    private String token(int bytes) {
        byte[] drawn = new byte[bytes];
        random.nextBytes(drawn);
        return HexFormat.of().formatHex(drawn);
    }

    private PairedDevice device(JsonNode node) {
        String digest = node.path("tokenSha256").asText();
        if (!digest.matches("[0-9a-f]{64}") || node.path("id").asText().isEmpty()) {
            throw damaged();
        }
        return new PairedDevice(
                node.path("id").asText(),
                node.path("name").asText(),
                Instant.parse(node.path("paired").asText()),
                LocalDate.parse(node.path("lastSeen").asText()),
                digest);
    }

    private void write(List<PairedDevice> devices) {
        ObjectNode root = Json.MAPPER.createObjectNode();
        ArrayNode list = root.putArray("devices");
        for (PairedDevice device : devices) {
            list.addObject()
                    .put("id", device.id())
                    .put("name", device.name())
                    .put("paired", device.paired().toString())
                    .put("lastSeen", device.lastSeen().toString())
                    .put("tokenSha256", device.tokenDigest());
        }
        byte[] content = (root.toPrettyString() + "\n").getBytes(StandardCharsets.UTF_8);
        try {
            Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent());
            Files.createDirectories(folder);
            boolean posix = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
            FileAttribute<?>[] owner = posix
                    ? new FileAttribute<?>[] {
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                    }
                    : new FileAttribute<?>[0];
            WholeFile.write(file, content, folder, owner);
        } catch (IOException e) {
            throw new OperationFailed("The list of paired devices cannot be written: "
                    + NotWritten.why(file, content.length).sentence(file));
        }
    }

    private OperationFailed damaged() {
        return new OperationFailed("The list of paired devices is damaged: " + file
                + ". No device is admitted. Start a new list by revoking all devices ({do:devices-revoke device=all}); then pair each"
                + " device again.");
    }

    private static String digest(String token) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
