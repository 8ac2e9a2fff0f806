package polewright.web.access;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import polewright.operations.OperationFailed;

/**
 * The self-signed certificate (X.509, RFC 5280) of this machine. No authority has signed it, so a browser warns; the
 * fingerprint identifies it. Made with Java's own {@code keytool}.
 *
 * @param file a PKCS 12 key store (RFC 7292), readable only by its owner
 * @param fingerprint SHA-256 of the certificate, in hexadecimal pairs with colons, as browsers show it
 */
public record ServerCertificate(Path file, String fingerprint) {
    /** The file's name in the data folder. */
    public static final String FILE = "certificate.p12";

    /** The store's format requires one; the file's mode is what protects the key. */
    static final String PASSWORD = "polewright";

    private static final String ALIAS = "polewright";
    // Phones refuse a server certificate that is valid for more than 825 days.
    private static final int LIFE_DAYS = 800;
    // A phone's clock may be slow.
    private static final String BEGINS = "-1d";
    private static final Duration RENEWED_BEFORE_END = Duration.ofDays(30);
    private static final long LONGEST_MAKING_SECONDS = 60;
    private static final String OCTET = "(?:25[0-5]|2[0-4]\\d|1\\d\\d|[1-9]?\\d)";
    private static final Pattern ADDRESS = Pattern.compile("(?:" + OCTET + "\\.){3}" + OCTET);
    // Host names by RFC 1123, section 2.1; a certificate can hold no others (RFC 5280, section 4.2.1.6).
    private static final String LABEL = "[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?";
    private static final Pattern DNS_NAME = Pattern.compile("(?:" + LABEL + "\\.)*" + LABEL);
    private static final Pattern LETTER = Pattern.compile("[A-Za-z]");
    private static final int LONGEST_DNS_NAME = 253;

    /**
     * The stored certificate, or a new one if there is none, if it expires soon, or if the machine now has other
     * names.
     *
     * @param names addresses and names of the machine on the network, without port; a name that no certificate can
     *     hold, such as one with an underscore, is left out
     * @throws OperationFailed if it can be neither read nor made
     */
    public static ServerCertificate in(Path dataFolder, Set<String> names, Instant now) {
        return in(dataFolder, names, now, Path.of(System.getProperty("java.home"), "bin", "keytool"));
    }

    static ServerCertificate in(Path dataFolder, Set<String> names, Instant now, Path keytool) {
        Path file = dataFolder.resolve(FILE);
        Set<String> all = names.stream()
                .filter(name -> isAddress(name) || isDnsName(name))
                .collect(Collectors.toCollection(TreeSet::new));
        all.add("localhost");
        all.add("127.0.0.1");
        Optional<X509Certificate> kept = read(file).filter(certificate -> isGood(certificate, all, now));
        X509Certificate certificate = kept.orElseGet(() -> {
            make(file, all, keytool);
            return read(file).orElseThrow(() -> notWritten(file));
        });
        return new ServerCertificate(file, fingerprint(certificate));
    }

    private static boolean isGood(X509Certificate certificate, Set<String> names, Instant now) {
        return !now.isBefore(certificate.getNotBefore().toInstant())
                && now.isBefore(certificate.getNotAfter().toInstant().minus(RENEWED_BEFORE_END))
                && names(certificate).equals(names);
    }

    private static Set<String> names(X509Certificate certificate) {
        Set<String> names = new TreeSet<>();
        try {
            for (List<?> name : Optional.ofNullable(certificate.getSubjectAlternativeNames())
                    .orElse(List.of())) {
                names.add(String.valueOf(name.get(1)));
            }
        } catch (GeneralSecurityException unreadable) {
            return Set.of();
        }
        return names;
    }

    private static Optional<X509Certificate> read(Path file) {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try (InputStream in = Files.newInputStream(file)) {
            KeyStore store = KeyStore.getInstance("PKCS12");
            store.load(in, PASSWORD.toCharArray());
            return store.getCertificate(ALIAS) instanceof X509Certificate certificate
                    ? Optional.of(certificate)
                    : Optional.empty();
        } catch (IOException | GeneralSecurityException damaged) {
            // A new one replaces it; the terminal shows its fingerprint.
            return Optional.empty();
        }
    }

    private static void make(Path file, Set<String> names, Path keytool) {
        try {
            Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent());
            Files.createDirectories(folder);
            // In a private folder, so that no other user can read the key while it is written.
            Path making = Files.createTempDirectory(folder, FILE, mode(folder, "rwx------"));
            Path made = making.resolve(FILE);
            try {
                run(keytool, words(made, names));
                if (mode(folder, "rw-------").length > 0) {
                    Files.setPosixFilePermissions(made, PosixFilePermissions.fromString("rw-------"));
                }
                Files.move(made, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(made);
                Files.deleteIfExists(making);
            }
        } catch (IOException e) {
            throw notWritten(file);
        }
    }

    private static void run(Path keytool, List<String> words) throws IOException {
        List<String> command = new ArrayList<>(List.of(keytool.toString()));
        command.addAll(words);
        Process process;
        try {
            process = new ProcessBuilder(command).redirectErrorStream(true).start();
        } catch (IOException absent) {
            throw new OperationFailed("Java's keytool, which makes the certificate, is missing: " + keytool
                    + ". Install a full Java, or leave out --secure.");
        }
        try {
            // Its output is shorter than a pipe's buffer, so it never blocks on a reader.
            if (!process.waitFor(LONGEST_MAKING_SECONDS, TimeUnit.SECONDS)) {
                throw new OperationFailed("Java's keytool did not make the certificate within " + LONGEST_MAKING_SECONDS
                        + " seconds. Start again, or leave out --secure.");
            }
            if (process.exitValue() != 0) {
                throw new OperationFailed("Java's keytool did not make the certificate. Its message: "
                        + complaint(process) + ". Correct that, or leave out --secure.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new OperationFailed("Making the certificate was interrupted. Start again.");
        } finally {
            process.destroyForcibly();
        }
    }

    /** The last line of its output, without the program's class names. */
    private static String complaint(Process keytool) throws IOException {
        try (BufferedReader said = keytool.inputReader()) {
            String last = said.lines()
                    .filter(line -> !line.isBlank())
                    .reduce((before, after) -> after)
                    .orElse("nothing");
            return last.replaceFirst("^.*\\b(\\w+\\.)+\\w*(Exception|Error): ", "")
                    .replaceFirst("[. ]+$", "");
        }
    }

    private static FileAttribute<?>[] mode(Path folder, String mode) {
        return folder.getFileSystem().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(mode))}
                : new FileAttribute<?>[0];
    }

    private static List<String> words(Path made, Set<String> names) {
        List<String> alternatives = names.stream()
                .map(name -> (isAddress(name) ? "ip:" : "dns:") + name)
                .toList();
        return List.of(
                "-genkeypair",
                "-alias",
                ALIAS,
                "-keyalg",
                "EC",
                "-groupname",
                "secp256r1",
                "-sigalg",
                "SHA256withECDSA",
                "-dname",
                "CN=Polewright on this laptop",
                "-startdate",
                BEGINS,
                "-validity",
                Integer.toString(LIFE_DAYS),
                "-ext",
                "san=" + String.join(",", alternatives),
                "-ext",
                "eku=serverAuth",
                "-ext",
                "bc=ca:false",
                "-storetype",
                "PKCS12",
                "-storepass",
                PASSWORD,
                "-keystore",
                made.toString());
    }

    private static boolean isAddress(String name) {
        return ADDRESS.matcher(name).matches();
    }

    /** A host name of digits alone could be mistaken for an address, so the last label must contain a letter. */
    private static boolean isDnsName(String name) {
        return name.length() <= LONGEST_DNS_NAME
                && DNS_NAME.matcher(name).matches()
                && LETTER.matcher(name.substring(name.lastIndexOf('.') + 1)).find();
    }

    private static String fingerprint(X509Certificate certificate) {
        try {
            return HexFormat.ofDelimiter(":")
                    .withUpperCase()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(certificate.getEncoded()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static OperationFailed notWritten(Path file) {
        return new OperationFailed("The certificate cannot be written: " + file
                + ". Free some space or make the folder writable, or leave out --secure.");
    }
}
