package polewright.web;

import java.time.Clock;
import java.util.Optional;
import polewright.alignment.camera.Drive;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.NearPlace;
import polewright.operations.practice.LatestPractice;
import polewright.sky.angle.Angle;
import polewright.web.session.FrameSource;
import polewright.web.session.NightSession;
import polewright.web.session.PracticeAddress;

/** The session of the most recent practice, with its own log, clock and camera. */
public final class PracticeSession {
    // The tube stays in its home position, and a practice wedge is off by some degrees.
    private static final FrameClues HOME = new FrameClues(
            Optional.of(new NearPlace.Pole(Optional.empty())),
            Angle.ofDegrees(15),
            FrameClues.NONE.scale(),
            FrameClues.NONE.focalLengthMm(),
            FrameClues.NONE.pixelMicrons(),
            FrameClues.NONE.mirrored(),
            FrameClues.NONE.site(),
            FrameClues.NONE.decoding());

    private PracticeSession() {}

    /**
     * A session that exists before any practice has begun.
     *
     * @param real the workbench that stores the practices
     * @param realTime a running clock: a practice's own clock does not run by itself
     */
    public static NightSession of(Workbench real, Clock realTime) {
        LatestPractice latest = new LatestPractice(real);
        return new NightSession(PracticeAddress.NIGHT, latest::bench)
                .watching(new FrameSource(latest::frames, false, HOME, Drive.NOT_TOLD), realTime);
    }
}
