package polewright.image.decode;

import com.twelvemonkeys.imageio.metadata.Entry;
import com.twelvemonkeys.imageio.metadata.tiff.TIFF;
import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageMetadata;
import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReader;
import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import com.twelvemonkeys.imageio.stream.ByteArrayImageInputStream;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.SampleModel;
import java.io.IOException;
import java.time.ZoneOffset;
import java.util.Iterator;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.stream.ImageInputStream;
import polewright.image.Frame;
import polewright.image.FrameFacts;
import polewright.sky.InputRefused;

/**
 * Decodes JPEG, PNG and TIFF pictures with the readers of Java's image library and its plug-ins.
 *
 * <p>JPEG values are linearised by the sRGB curve (IEC 61966-2-1), which cameras write: a star keeps its shape from
 * core to wing, and colours average as light does. PNG and TIFF are used as they are: from a capture program they are
 * linear.
 */
final class PictureDecoder {
    // Modified Huffman, T.4, T.6.
    private static final Set<Integer> FAX = Set.of(2, 3, 4);
    // Colours, black, transparency and some to spare.
    private static final int MOST_SAMPLES = 8;

    private PictureDecoder() {}

    static Frame jpeg(byte[] content, DecodeOptions options) throws IOException {
        JpegOutline outline = JpegOutline.whole(content, 0)
                .orElseThrow(() ->
                        new InputRefused("this JPEG is incomplete", "wait until it is fully saved, or copy it again"));
        TiffDirectories exif =
                outline.exif() < 0 ? TiffDirectories.none() : TiffDirectories.of(content, outline.exif());
        return jpeg(content, 0, content.length, exif, options);
    }

    /** A JPEG within other bytes, with metadata from elsewhere. */
    static Frame jpeg(byte[] content, int start, int length, TiffDirectories exif, DecodeOptions options)
            throws IOException {
        JpegOutline outline = JpegOutline.whole(content, start).orElseThrow(() -> new IOException("no size in it"));
        if (outline.end() < 0 || outline.end() > start + length) {
            throw new InputRefused("this JPEG is incomplete", "wait until it is fully saved, or copy it again");
        }
        FrameSize.checkHolds(length, (long) outline.width() * Math.max(1, outline.scans()), outline.height(), 1);
        JpegDamage damage = new JpegDamage(content, start, start + length);
        ImageReader reader = registered("JPEG");
        reader.addIIOReadWarningListener(damage);
        Frame frame = decode(
                reader,
                new ByteArrayImageInputStream(content, start, length),
                GreyRaster.Tone.SRGB,
                options,
                facts(exif, options.cameraZone()));
        // The blocks of the kind that nearly all cameras write can be checked; for others the library's verdict is
        // accepted.
        boolean isSound = outline.isBaseline()
                ? JpegScans.areValid(content, start, outline.end(), options.deadline())
                : !damage.isDamaged();
        if (!isSound) {
            throw damaged();
        }
        return frame;
    }

    private static InputRefused damaged() {
        return new InputRefused(
                "it is damaged, and its stars may be in the wrong places",
                "copy it again from the camera, or take another frame");
    }

    static Frame png(byte[] content, DecodeOptions options) throws IOException {
        PngOutline outline = PngOutline.of(content);
        if (!outline.whole()) {
            throw new InputRefused("this PNG is incomplete", "wait until it is fully saved, or copy it again");
        }
        TiffDirectories exif =
                outline.exif() < 0 ? TiffDirectories.none() : TiffDirectories.of(content, outline.exif());
        Frame frame = decode(
                registered("PNG"),
                new ByteArrayImageInputStream(content),
                GreyRaster.Tone.AS_STORED,
                options,
                facts(exif, options.cameraZone()));
        if (outline.damaged()) {
            throw damaged();
        }
        return frame;
    }

    static Frame tiff(byte[] content, TiffDirectories directories, DecodeOptions options) throws IOException {
        return decode(
                new TIFFImageReaderSpi().createReaderInstance(null),
                new ByteArrayImageInputStream(content),
                GreyRaster.Tone.AS_STORED,
                options,
                facts(directories, options.cameraZone()));
    }

    private static BiFunction<Integer, Integer, FrameFacts> facts(TiffDirectories exif, Optional<ZoneOffset> zone) {
        return (width, height) -> ExifFacts.of(exif, width, height, zone);
    }

    private static Frame decode(
            ImageReader reader,
            ImageInputStream in,
            GreyRaster.Tone tone,
            DecodeOptions options,
            BiFunction<Integer, Integer, FrameFacts> facts)
            throws IOException {
        try (in) {
            reader.addIIOReadProgressListener(new DeadlineListener(options.deadline()));
            reader.setInput(in, true, true);
            if (reader instanceof TIFFImageReader) {
                TIFFImageMetadata directory = (TIFFImageMetadata) reader.getImageMetadata(0);
                refuseFax(directory);
                refuseManySamples(directory);
            }
            int width = reader.getWidth(0);
            int height = reader.getHeight(0);
            int type = checkSize(reader, width, height, in.length(), options);
            GreyRaster grey = type == DataBuffer.TYPE_FLOAT || type == DataBuffer.TYPE_DOUBLE
                    ? GreyRaster.of(reader.readRaster(0, null))
                    : read(reader, tone);
            // A reader that was stopped returns what it has.
            options.deadline().check();
            return FrameAssembly.pixels(
                    width,
                    height,
                    grey.pixels(),
                    new Saturation(OptionalDouble.empty(), grey.full()),
                    grey.planes() == 1 && options.mosaic() == Mosaic.BAYER,
                    facts.apply(width, height));
        } finally {
            reader.dispose();
        }
    }

    /**
     * Bilevel pictures with fax compression (TIFF 6.0, sections 10 and 11). The library throws and catches an exception
     * for each row missing at the end.
     */
    private static void refuseFax(TIFFImageMetadata directory) {
        Entry compression = directory.getTIFFField(TIFF.TAG_COMPRESSION);
        if (compression != null && compression.getValue() instanceof Number way && FAX.contains(way.intValue())) {
            throw new InputRefused(
                    "it uses fax compression, black and white only, without brightness",
                    "save it in grey or colour, or as FITS");
        }
    }

    /** The library allocates memory for each sample of a pixel before it reads any. */
    private static void refuseManySamples(TIFFImageMetadata directory) {
        Entry samples = directory.getTIFFField(TIFF.TAG_SAMPLES_PER_PIXEL);
        if (samples != null
                && samples.getValue() instanceof Number many
                && !(many.doubleValue() >= 1 && many.doubleValue() <= MOST_SAMPLES)) {
            throw new InputRefused(
                    "it says it has " + many + " samples in each pixel, and the limits are 1 and " + MOST_SAMPLES,
                    "copy it again, or take another frame");
        }
    }

    private static GreyRaster read(ImageReader reader, GreyRaster.Tone tone) throws IOException {
        BufferedImage image = reader.read(0);
        return GreyRaster.of(image.getRaster(), image.getColorModel(), tone);
    }

    /** Returns the type of the samples. */
    private static int checkSize(ImageReader reader, int width, int height, long fileBytes, DecodeOptions options)
            throws IOException {
        // A preliminary check of the pixel count: even asking for the type may cost as much as the claimed size.
        FrameSize.checkHolds(fileBytes, width, height, 1);
        FrameSize.check(width, height, 0, options);
        Iterator<ImageTypeSpecifier> types = reader.getImageTypes(0);
        if (!types.hasNext()) {
            throw new IIOException("no type that can be read");
        }
        SampleModel samples = types.next().getSampleModel(1, 1);
        int bytes = samples.getNumBands() * DataBuffer.getDataTypeSize(samples.getDataType()) / 8;
        FrameSize.checkHolds(fileBytes, width, height, bytes);
        FrameSize.check(width, height, bytes, options);
        return samples.getDataType();
    }

    private static ImageReader registered(String format) throws IOException {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
        if (!readers.hasNext()) {
            throw new IOException("no reader for " + format);
        }
        return readers.next();
    }
}
