package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.Stream;
import polewright.image.Frame;
import polewright.image.decode.DecodeLimits;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameCompleteness;
import polewright.operations.OperationFailed;
import polewright.operations.camera.FrameDecoding;
import polewright.operations.night.NightsFile;
import polewright.session.NightId;
import polewright.sky.InputRefused;
import polewright.store.NightLog;
import polewright.store.SubmissionKey;
import polewright.store.disk.WholeFile;
import polewright.web.access.Admission;
import polewright.web.form.PageWording;
import polewright.web.page.ChosenNight;
import polewright.web.session.FrameAddress;
import polewright.web.session.NightSession;
import polewright.web.session.WatchedFrames;

/**
 * Routes that take files from a page: a frame for the watched folder, or a night for the log. An upload is written to
 * disk as it arrives, checked, and accepted whole or not at all; sent again with the same key, it is accepted once.
 */
final class UploadRoutes {
    /** Largest uploaded night, bytes: a night of a thousand events has a third of a million. */
    static final long NIGHT_BYTES = 8L << 20;

    private static final int LEAST_SIDE_PIXELS = 32;
    private static final int PARTS_IN_MEMORY_BYTES = 16 * 1024;
    // Allowance for the form data around the file.
    private static final long AROUND_BYTES = 64 * 1024;
    private static final int LONGEST_NAME = 60;
    private static final int KEY_IN_NAME = 8;

    // About as long as a browser and its user will wait; few frames take longer to decode.
    private static final long TURN_SECONDS = 10;

    private final NightSession session;
    // Checking a frame takes much memory. Its decoding has a deadline, so the lock is always released.
    private final ReentrantLock oneAtATime = new ReentrantLock();

    /** An upload; its file is on disk and is deleted with the request. */
    private record Sent(SubmissionKey key, UploadedFile file) {}

    private UploadRoutes(NightSession session) {
        this.session = session;
    }

    static void add(JavalinConfig config, NightSession session) {
        UploadRoutes routes = new UploadRoutes(session);
        config.jetty.multipartConfig.maxFileSize(Admission.FRAME_BYTES, SizeUnit.BYTES);
        config.jetty.multipartConfig.maxTotalRequestSize(Admission.FRAME_BYTES + AROUND_BYTES, SizeUnit.BYTES);
        config.jetty.multipartConfig.maxInMemoryFileSize(PARTS_IN_MEMORY_BYTES, SizeUnit.BYTES);
        session.frames()
                .ifPresent(frames -> config.routes.post(
                        session.prefix() + FrameAddress.UPLOAD,
                        ctx -> routes.answer(ctx, sent -> routes.frame(ctx, frames, sent))));
        config.routes.post(
                session.prefix() + ChosenNight.UPLOAD, ctx -> routes.answer(ctx, sent -> routes.night(ctx, sent)));
    }

    /** What to do with an upload. */
    @FunctionalInterface
    private interface Taking {
        void take(Sent sent) throws IOException;
    }

    private void answer(Context ctx, Taking taking) {
        try {
            Optional<Sent> sent = sent(ctx);
            if (sent.isPresent() && tryStart(ctx)) {
                try {
                    taking.take(sent.get());
                } finally {
                    oneAtATime.unlock();
                }
            }
        } catch (InputRefused refused) {
            refuse(ctx, HttpStatus.UNPROCESSABLE_CONTENT, String.valueOf(refused.getMessage()));
        } catch (IOException e) {
            refuse(
                    ctx,
                    HttpStatus.INSUFFICIENT_STORAGE,
                    "It cannot be saved. Free some space on the laptop's disk, then send it again.");
        }
    }

    /** Takes the lock for checking an upload; if that takes too long, answers the request and returns false. */
    private boolean tryStart(Context ctx) {
        try {
            if (oneAtATime.tryLock(TURN_SECONDS, TimeUnit.SECONDS)) {
                return true;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        refuse(
                ctx,
                HttpStatus.SERVICE_UNAVAILABLE,
                "Another file is still being read. Send this one again in a moment.");
        return false;
    }

    private void refuse(Context ctx, HttpStatus status, String sentence) {
        // Unless it begins with a file's name.
        boolean beginsWithAWord = sentence.matches("(?s)[a-z]+ .*");
        String shown = beginsWithAWord ? Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) : sentence;
        Responses.refuse(ctx, session, status, "Not taken", shown);
    }

    /** Empty if the request has been answered already. */
    private Optional<Sent> sent(Context ctx) {
        UploadedFile file;
        String key;
        try {
            file = ctx.uploadedFile("file");
            key = ctx.formParam("key");
        } catch (Exception broken) {
            boolean isTooLarge = isTooLarge(broken);
            // The rest of the body is not read, so the connection cannot be used again.
            ctx.header("Connection", "close");
            refuse(
                    ctx,
                    isTooLarge ? HttpStatus.CONTENT_TOO_LARGE : HttpStatus.BAD_REQUEST,
                    isTooLarge
                            ? tooLarge(Admission.FRAME_BYTES)
                            : "The upload was interrupted or did not come from this page. Send it again.");
            return Optional.empty();
        }
        if (file == null || (file.size() == 0 && file.filename().isEmpty())) {
            refuse(ctx, HttpStatus.UNPROCESSABLE_CONTENT, "No file was chosen. Choose one, then send it.");
            return Optional.empty();
        }
        return Optional.of(new Sent(new SubmissionKey(key == null ? "" : key), file));
    }

    /** The reason why reading a body failed is several causes deep, and only its message identifies it. */
    private static boolean isTooLarge(Throwable broken) {
        return Stream.iterate(broken, Objects::nonNull, Throwable::getCause)
                .anyMatch(cause -> String.valueOf(cause.getMessage()).matches("max .* exceeded.*"));
    }

    private static String tooLarge(long most) {
        return "That is larger than the " + (most >> 20) + " MiB limit. Send a smaller file.";
    }

    private void frame(Context ctx, WatchedFrames frames, Sent sent) throws IOException {
        Path folder = frames.folder()
                .orElseThrow(
                        () -> new InputRefused("there is no folder for frames", "take frames on the page Practice"));
        if (session.tonight().isEmpty()) {
            throw new InputRefused(
                    "no night has begun yet, so this frame has no night to belong to", "begin a night, then send it");
        }
        String name = safeName(sent.file().filename());
        Path kept = folder.resolve(name(name, sent.key()));
        if (!Files.exists(kept)) {
            if (frames.isOwnFolder()) {
                Files.createDirectories(folder);
            }
            // Files present when the watch begins count as old.
            if (!frames.refresh()) {
                refuse(
                        ctx,
                        HttpStatus.SERVICE_UNAVAILABLE,
                        "The previous frame is still being measured. Send this one again in a moment.");
                return;
            }
            try {
                keep(sent.file(), name, kept);
            } catch (IOException e) {
                requireFolder(folder);
                throw e;
            }
        }
        ctx.redirect(session.prefix() + FrameAddress.PAGE, HttpStatus.SEE_OTHER);
    }

    private static void keep(UploadedFile file, String name, Path kept) throws IOException {
        Path part = Files.createTempFile(kept.getParent(), "sent-", ".part");
        try {
            try (InputStream in = file.content()) {
                Files.copy(in, part, StandardCopyOption.REPLACE_EXISTING);
            }
            requireFrame(WholeFile.read(part), name);
            Files.move(part, kept, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** A folder that cannot be written to is not always full: a USB stick may have been pulled out. */
    private static void requireFolder(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new InputRefused(
                    "the folder for frames, " + folder + ", does not exist",
                    "reconnect it if it is on a stick or the network, then send the frame again");
        }
        if (!Files.isWritable(folder)) {
            throw new InputRefused(
                    "nothing can be written to the folder for frames, " + folder,
                    "remove the write protection or change its permissions, then send the frame again");
        }
    }

    /** A file that is not a frame is refused at once, not only when the watch reaches it. */
    private static void requireFrame(byte[] content, String name) {
        if (FrameDecoding.completeness(content, name, DecodeLimits.OF_AN_UPLOAD)
                instanceof FrameCompleteness.CutShort) {
            throw new InputRefused(name + ": it is incomplete", "send it again once it is fully saved");
        }
        Frame frame = FrameDecoding.read(content, name, DecodeOptions.DEFAULT.withLimits(DecodeLimits.OF_AN_UPLOAD));
        if (Math.min(frame.width(), frame.height()) < LEAST_SIDE_PIXELS) {
            throw new InputRefused(
                    name + ": a picture of " + frame.width() + " by " + frame.height()
                            + " pixels is too small for a star field",
                    "take the frame again");
        }
    }

    private void night(Context ctx, Sent sent) throws IOException {
        if (sent.file().size() > NIGHT_BYTES) {
            refuse(ctx, HttpStatus.CONTENT_TOO_LARGE, tooLarge(NIGHT_BYTES));
            return;
        }
        Path folder = Files.createTempDirectory("polewright-sent");
        Path file = folder.resolve(safeName(sent.file().filename()));
        try {
            try (InputStream in = sent.file().content()) {
                Files.copy(in, file);
            }
            long first = firstAdded(file, sent.key()).number();
            ctx.redirect(session.prefix() + ChosenNight.PAGE + "?night=" + first, HttpStatus.SEE_OTHER);
        } catch (InputRefused | OperationFailed refused) {
            // The message names the file as the person sent it, without the temporary folder.
            String words = PageWording.GENERAL.of(String.valueOf(refused.getMessage()));
            refuse(ctx, HttpStatus.UNPROCESSABLE_CONTENT, words.replace(folder + "/", ""));
        } finally {
            Files.deleteIfExists(file);
            Files.delete(folder);
        }
    }

    private NightId firstAdded(Path file, SubmissionKey key) {
        try (NightLog opened = NightLog.open(session.workbench().defaultLog())) {
            return NightsFile.addTo(opened, file, false, Optional.of(key))
                    .nights()
                    .get(0);
        }
    }

    /** The last part of the client's file name, in characters that every file system accepts. */
    static String safeName(String original) {
        String last = original.substring(Math.max(original.lastIndexOf('/'), original.lastIndexOf('\\')) + 1);
        String plain = last.replaceAll("[^A-Za-z0-9._-]+", "-");
        String end = plain.substring(Math.max(0, plain.length() - LONGEST_NAME));
        // Last, because shortening may expose another: a file with a leading dot is hidden, and a leading hyphen looks
        // like an option.
        String safe = end.replaceFirst("^[.-]+", "");
        return safe.isEmpty() ? "sent" : safe;
    }

    /** A file saved by a capture program is never overwritten, and an upload sent again gets the same name. */
    private static String name(String safe, SubmissionKey key) {
        int dot = safe.lastIndexOf('.');
        String mark = "-" + key.text().substring(0, KEY_IN_NAME);
        return dot <= 0 ? safe + mark : safe.substring(0, dot) + mark + safe.substring(dot);
    }
}
