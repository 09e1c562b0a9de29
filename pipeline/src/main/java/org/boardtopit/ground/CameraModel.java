package org.boardtopit.ground;

/** What the camera did during the clip, as far as its pictures tell. */
public enum CameraModel {
    /** It stood still. */
    STILL,
    /** It turned and zoomed about one place, as on a tripod. */
    TURNING,
    /** Neither explains the pictures: it was carried, or its lens bends the picture. Every frame has a free map. */
    FREE
}
