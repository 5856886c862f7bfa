package org.collarbook.custody;

/** WGS 84, in degrees. */
public record Coordinates(double latitude, double longitude) {

    public Coordinates {
        if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
            throw new IllegalArgumentException("coordinates " + latitude + ", " + longitude
                    + ": expected -90 to 90 and -180 to 180");
        }
    }
}
