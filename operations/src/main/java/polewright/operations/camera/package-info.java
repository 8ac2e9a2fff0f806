/**
 * From the files of frames to where the camera pointed.
 * <pre>
 *   file ──FrameFile──▶ bytes ──FrameReading──▶ DecodedFrame ──FrameReading──▶ PlacedFrame ──(site, time)──▶ attitude
 *                                                                   ▲
 *                            FrameClues: what the observer knows about it, or EarlierFrames
 * </pre>
 */
@NullMarked
package polewright.operations.camera;

import org.jspecify.annotations.NullMarked;
