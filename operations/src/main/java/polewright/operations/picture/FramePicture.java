package polewright.operations.picture;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import polewright.drawing.Palette;
import polewright.drawing.frame.FrameCaption;
import polewright.drawing.frame.FrameDrawing;
import polewright.drawing.frame.FrameScene;
import polewright.image.Frame;
import polewright.operations.camera.PlacedFrame;

/** A placed frame as a file: the page's picture on a dark sky, with the meaning of its marks and a caption below. */
public final class FramePicture {
    /** On a dark ground, to preserve night vision; each mark has its own colour and shape. */
    static final Palette COLOURS =
            new Palette("#101216", "#d8d2c4", "#6fc3b4", "#c8788e", "#2a2e34", "#2a2e34", "#ff7a45");

    private FramePicture() {}

    /**
     * The bytes of a PNG.
     *
     * @param frame its pixels
     * @param axis the mount's axis, if known
     * @param words the caption, one line each
     */
    public static byte[] png(
            Frame frame, PlacedFrame placed, PointMark pole, Optional<PointMark> axis, List<String> words) {
        PictureScale scale = PictureScale.forFile(frame.width(), frame.height(), placed.rows());
        FrameScene scene = PlacedScene.inFile(placed, scale, pole, axis);
        FrameCaption caption = new FrameCaption(scene, words);
        BufferedImage image =
                new BufferedImage(scene.width(), scene.height() + caption.height(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        try {
            graphics.drawImage(ScreenPicture.image(scale, frame, Tint.GREY), 0, 0, null);
            PixelCanvas canvas = new PixelCanvas(graphics, COLOURS);
            FrameDrawing.draw(scene, canvas, COLOURS);
            caption.draw(canvas, COLOURS);
        } finally {
            graphics.dispose();
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("a picture was not written to memory", e);
        }
        return bytes.toByteArray();
    }
}
