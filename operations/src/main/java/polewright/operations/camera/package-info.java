/**
 * From the files of frames to where the camera looked.
 *
 * <pre>
 *   file ──FrameFile──▶ bytes ──FrameReading──▶ DecodedFrame ──FrameReading──▶ PlacedFrame ──(site, time)──▶ attitude
 *                                                                   ▲
 *                            FrameClues: what the person tells of it, or EarlierFrames
 * </pre>
 */
@NullMarked
package polewright.operations.camera;

import org.jspecify.annotations.NullMarked;
