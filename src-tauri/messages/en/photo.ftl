# Why a photo is not taken in.

photo-empty = The photo file is empty. Take the photo again.
# $bytes: bytes found; $limit: bytes allowed
photo-too-many-bytes = The photo file has { $bytes } bytes; at most { $limit } bytes are taken in. Take the photo again with a smaller picture size in the camera's settings.
# $found: photo-found-*
photo-not-a-photo = The file is { $found }, not a JPEG or PNG photo. Take the photo again with the camera, or choose a JPEG or PNG file.
# $kind: JPEG or PNG
photo-cut-off = The { $kind } photo ends before its picture is complete, so a part is missing. Take the photo again.
# $kind: JPEG or PNG; $what: photo-damage-*
photo-damaged = The { $kind } photo is damaged: { $what }. Take the photo again.
# $width: width found, in pixels; $height: height found, in pixels; $pixels: width times height; $limit: pixels allowed
photo-too-many-pixels = The photo has { $width } x { $height } = { $pixels } pixels; at most { $limit } pixels are taken in of such a file. Take the photo again with a smaller picture size in the camera's settings.
# $width: width found, in pixels; $height: height found, in pixels; $limit: longest side allowed, in pixels
photo-side-too-long = The photo has { $width } x { $height } pixels; no side may be longer than { $limit } pixels. Take the photo again without panorama mode.
# $kind: JPEG or PNG
photo-undecodable = The picture in the { $kind } photo can't be decoded; the file may be damaged. Take the photo again.
photo-preparing = The photo was read but could not be prepared for keeping. Take the photo again; if this comes back, report it.

## What a file looks like by its first bytes

photo-found-gif = a GIF picture
photo-found-webp = a WebP picture
photo-found-pdf = a PDF document
photo-found-bmp = a BMP picture
photo-found-tiff = a TIFF picture or a raw photo
photo-found-heic-or-video = a HEIC or AVIF picture or a video
photo-found-zip = a ZIP archive
photo-found-text = a text file
photo-found-unknown = a file of an unknown kind

## What is wrong in a damaged photo

photo-damage-no-header = it doesn't start with its header
photo-damage-profile-too-large = its color profile is far too large
photo-damage-checksum = a part of it has a wrong checksum
photo-damage-no-size = it doesn't say its size
photo-damage-size-zero = it says it has no width or no height
photo-damage-too-many-scans = it has far too many scans
photo-damage-size-twice = it says its size twice
photo-damage-no-picture = there is no picture in it
photo-damage-frame-too-short = its frame header is too short
photo-damage-segment-length = a segment has a wrong length
