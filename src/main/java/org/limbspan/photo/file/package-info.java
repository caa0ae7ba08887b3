/**
 * Picture files: what they are, when and how they were taken, and their pixels in linear light.
 * Entry points {@link org.limbspan.photo.file.PhotoFile} and {@link
 * org.limbspan.photo.file.PhotoDecoder}.
 *
 * <p>Nothing is decoded before the header has been held against the limits of {@link
 * org.limbspan.photo.file.PhotoLimits}, and nothing but bands of the picture is decoded at once.
 */
@NullMarked
package org.limbspan.photo.file;

import org.jspecify.annotations.NullMarked;
