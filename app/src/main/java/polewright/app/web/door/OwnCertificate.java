package polewright.app.web.door;

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
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import polewright.app.JobFailed;

/**
 * The certificate (X.509, RFC 5280) that this machine has made for itself. Nobody vouches for it, so a browser warns; the
 * fingerprint shows that it is this one. Java's own {@code keytool} makes it.
 *
 * @param file a PKCS 12 key store (RFC 7292), for its owner alone
 * @param fingerprint SHA-256 of the certificate, in hexadecimal pairs with colons, as browsers show it
 */
public record OwnCertificate(Path file, String fingerprint) {
    /** The file's name in the data folder. */
    public static final String FILE = "certificate.p12";

    /** The store's format asks for one; the file's mode is what keeps the key. */
    static final String PASSWORD = "polewright";

    private static final String ALIAS = "polewright";
    // Phones take no certificate of a server that is made for more than 825 days.
    private static final int LIFE_DAYS = 800;
    // A phone's clock may lag.
    private static final String BEGINS = "-1d";
    private static final Duration RENEWED_BEFORE_END = Duration.ofDays(30);
    private static final long LONGEST_MAKING_SECONDS = 60;

    /**
     * The one that is kept, or a new one: where there is none, where it soon ends, and where the machine goes by other
     * names now.
     *
     * @param names addresses and names of the machine on the network, without port
     * @throws JobFailed if it can be neither read nor made
     */
    public static OwnCertificate in(Path dataFolder, Set<String> names, Instant now) {
        Path file = dataFolder.resolve(FILE);
        Set<String> all = new TreeSet<>(names);
        all.add("localhost");
        all.add("127.0.0.1");
        Optional<X509Certificate> kept = read(file).filter(certificate -> isGood(certificate, all, now));
        X509Certificate certificate = kept.orElseGet(() -> {
            make(file, all);
            return read(file).orElseThrow(() -> unmade(file));
        });
        return new OwnCertificate(file, fingerprint(certificate));
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
            // Another is made in its place; the terminal shows its fingerprint.
            return Optional.empty();
        }
    }

    private static void make(Path file, Set<String> names) {
        try {
            Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent());
            Files.createDirectories(folder);
            // In a folder of its own, so that nobody else can read the key while it is written.
            Path making = Files.createTempDirectory(folder, FILE, mode(folder, "rwx------"));
            Path made = making.resolve(FILE);
            try {
                Process keytool = new ProcessBuilder(words(made, names))
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start();
                if (!keytool.waitFor(LONGEST_MAKING_SECONDS, TimeUnit.SECONDS) || keytool.exitValue() != 0) {
                    keytool.destroyForcibly();
                    throw unmade(file);
                }
                if (mode(folder, "rw-------").length > 0) {
                    Files.setPosixFilePermissions(made, PosixFilePermissions.fromString("rw-------"));
                }
                Files.move(made, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(made);
                Files.deleteIfExists(making);
            }
        } catch (IOException e) {
            throw unmade(file);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw unmade(file);
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
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
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
        return name.matches("[0-9.]+");
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

    private static JobFailed unmade(Path file) {
        return new JobFailed("The certificate cannot be made: " + file
                + ". Make room there, or let yourself write to that folder; or leave --secure out.");
    }
}
