package polewright.image.decode;

import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadProgressListener;

/** Stops an image reader, which calls it after every few rows, once the deadline has passed. */
record DeadlineListener(DecodeDeadline deadline) implements IIOReadProgressListener {
    @Override
    public void imageProgress(ImageReader source, float percentageDone) {
        if (deadline.isPast()) {
            source.abort();
        }
    }

    @Override
    public void imageStarted(ImageReader source, int imageIndex) {}

    @Override
    public void imageComplete(ImageReader source) {}

    @Override
    public void readAborted(ImageReader source) {}

    @Override
    public void sequenceStarted(ImageReader source, int minIndex) {}

    @Override
    public void sequenceComplete(ImageReader source) {}

    @Override
    public void thumbnailStarted(ImageReader source, int imageIndex, int thumbnailIndex) {}

    @Override
    public void thumbnailProgress(ImageReader source, float percentageDone) {}

    @Override
    public void thumbnailComplete(ImageReader source) {}
}
