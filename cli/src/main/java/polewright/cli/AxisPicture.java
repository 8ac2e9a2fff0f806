package polewright.cli;

import java.util.List;
import java.util.Optional;
import polewright.alignment.camera.AxisFromFrames;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameSeries;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.picture.PointMarks;
import polewright.report.text.AxisWords;
import polewright.sky.attitude.CameraAttitude;

/** Draws the last of the frames that gave the axis, with axis and pole: the view in which the screws are turned. */
final class AxisPicture {
    private AxisPicture() {}

    static void draw(
            PictureOption picture, Workbench workbench, Output output, FrameSeries series, AxisFromFrames found) {
        if (!picture.isAsked()) {
            return;
        }
        int last = series.frames().size() - 1;
        PlacedFrame frame = series.frames().get(last);
        CameraAttitude attitude = series.attitudes().get(last);
        picture.draw(
                workbench,
                output,
                frame,
                PointMarks.truePole(frame, attitude, found.site()),
                Optional.of(PointMarks.axis(frame, attitude, found.estimate())),
                List.of(AxisWords.line(found)));
    }
}
