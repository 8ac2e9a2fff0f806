package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.web.session.FrameAddress;
import polewright.web.session.NightSession;
import polewright.web.session.PracticeAddress;
import polewright.web.session.WatchedFrames;
import polewright.web.view.Section;

/** The newest frame in detail, and how to get frames here. */
final class FramesPage implements Page {
    @Override
    public String path() {
        return FrameAddress.PAGE;
    }

    @Override
    public String name() {
        return "Frames";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        Optional<WatchedFrames> frames = request.session().frames();
        boolean isPractice = request.session().prefix().equals(PracticeAddress.NIGHT);
        List<Section> sections = new ArrayList<>();
        if (frames.isEmpty() || (isPractice && frames.get().folder().isEmpty())) {
            sections.add(new Section.Words("", List.of(none(isPractice))));
            return sections;
        }
        Optional<NightSession.Tonight> tonight = request.session().tonight();
        if (tonight.isEmpty()) {
            return NoNightNotice.sections(request);
        }
        sections.add(FrameSection.alone(request, frames.get(), tonight.get()));
        if (isPractice) {
            sections.add(new Section.Ways(
                    "", List.of(new Section.Way(PracticeAddress.GAME, "Take frames and turn screws", false))));
        } else {
            sections.add(new Section.Words("How frames arrive", ways(frames.get())));
            sections.add(new Section.Upload(
                    "Send a frame",
                    request.to(FrameAddress.UPLOAD),
                    Forms.randomKey(),
                    "The frame",
                    "FITS, TIFF, PNG, JPEG or camera raw, up to 64 MiB.",
                    ".fit,.fits,.fts,.tif,.tiff,.png,.jpg,.jpeg,.cr2,.cr3,.nef,.arw,.dng,.orf,.raf,.rw2,.pef",
                    "Send it"));
        }
        return sections;
    }

    private static String none(boolean isPractice) {
        return isPractice
                ? "This practice has no camera. Begin one with a camera on the tube."
                : "No frames can arrive here.";
    }

    private static List<String> ways(WatchedFrames frames) {
        List<String> lines = new ArrayList<>();
        if (frames.isOwnFolder()) {
            lines.add("Start with the folder that your capture program saves to, and each new frame appears here"
                    + " automatically: polewright serve --frames FOLDER");
        } else {
            frames.folder()
                    .ifPresent(folder -> lines.add("Each new frame in " + folder + " appears here automatically."));
        }
        lines.add("Or send one from this device. At a terminal: polewright watch FOLDER");
        return lines;
    }
}
