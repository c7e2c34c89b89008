package broodtide.chart;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A drawing surface that takes shapes alone. Letters and pictures would need fonts and pixels, so
 * whoever asks for them learns at once that they are not to be had here.
 */
abstract class ShapesOnly extends Graphics2D {
  private static UnsupportedOperationException refused() {
    return new UnsupportedOperationException("only lines and areas are drawn here");
  }

  @Override
  public void setStroke(Stroke s) {}

  @Override
  public void setFont(Font f) {}

  @Override
  public void setRenderingHint(RenderingHints.Key key, Object value) {}

  @Override
  public @Nullable Object getRenderingHint(RenderingHints.Key key) {
    return null;
  }

  @Override
  public @Nullable Shape getClip() {
    return null;
  }

  @Override
  public void setClip(@Nullable Shape s) {}

  @Override
  public void dispose() {}

  @Override
  public boolean drawImage(Image i, AffineTransform t, ImageObserver o) {
    throw refused();
  }

  @Override
  public void drawImage(BufferedImage i, BufferedImageOp o, int x, int y) {
    throw refused();
  }

  @Override
  public void drawRenderedImage(RenderedImage i, AffineTransform t) {
    throw refused();
  }

  @Override
  public void drawRenderableImage(RenderableImage i, AffineTransform t) {
    throw refused();
  }

  @Override
  public void drawString(String s, int x, int y) {
    throw refused();
  }

  @Override
  public void drawString(String s, float x, float y) {
    throw refused();
  }

  @Override
  public void drawString(AttributedCharacterIterator s, int x, int y) {
    throw refused();
  }

  @Override
  public void drawString(AttributedCharacterIterator s, float x, float y) {
    throw refused();
  }

  @Override
  public void drawGlyphVector(GlyphVector v, float x, float y) {
    throw refused();
  }

  @Override
  public boolean hit(Rectangle r, Shape s, boolean stroked) {
    throw refused();
  }

  @Override
  public GraphicsConfiguration getDeviceConfiguration() {
    throw refused();
  }

  @Override
  public void setComposite(Composite c) {
    throw refused();
  }

  @Override
  public void setPaint(Paint p) {
    throw refused();
  }

  @Override
  public void setRenderingHints(Map<?, ?> h) {
    throw refused();
  }

  @Override
  public void addRenderingHints(Map<?, ?> h) {
    throw refused();
  }

  @Override
  public RenderingHints getRenderingHints() {
    throw refused();
  }

  @Override
  public void translate(int x, int y) {
    throw refused();
  }

  @Override
  public void translate(double x, double y) {
    throw refused();
  }

  @Override
  public void rotate(double a) {
    throw refused();
  }

  @Override
  public void rotate(double a, double x, double y) {
    throw refused();
  }

  @Override
  public void scale(double x, double y) {
    throw refused();
  }

  @Override
  public void shear(double x, double y) {
    throw refused();
  }

  @Override
  public void transform(AffineTransform t) {
    throw refused();
  }

  @Override
  public void setTransform(AffineTransform t) {
    throw refused();
  }

  @Override
  public AffineTransform getTransform() {
    throw refused();
  }

  @Override
  public Paint getPaint() {
    throw refused();
  }

  @Override
  public Composite getComposite() {
    throw refused();
  }

  @Override
  public void setBackground(Color c) {
    throw refused();
  }

  @Override
  public Color getBackground() {
    throw refused();
  }

  @Override
  public Stroke getStroke() {
    throw refused();
  }

  @Override
  public void clip(Shape s) {
    throw refused();
  }

  @Override
  public FontRenderContext getFontRenderContext() {
    throw refused();
  }

  @Override
  public Graphics create() {
    throw refused();
  }

  @Override
  public Color getColor() {
    throw refused();
  }

  @Override
  public void setPaintMode() {
    throw refused();
  }

  @Override
  public void setXORMode(Color c) {
    throw refused();
  }

  @Override
  public Font getFont() {
    throw refused();
  }

  @Override
  public FontMetrics getFontMetrics(Font f) {
    throw refused();
  }

  @Override
  public Rectangle getClipBounds() {
    throw refused();
  }

  @Override
  public void clipRect(int x, int y, int w, int h) {
    throw refused();
  }

  @Override
  public void setClip(int x, int y, int w, int h) {
    throw refused();
  }

  @Override
  public void copyArea(int x, int y, int w, int h, int dx, int dy) {
    throw refused();
  }

  @Override
  public void drawLine(int x, int y, int u, int v) {
    throw refused();
  }

  @Override
  public void fillRect(int x, int y, int w, int h) {
    throw refused();
  }

  @Override
  public void clearRect(int x, int y, int w, int h) {
    throw refused();
  }

  @Override
  public void drawRoundRect(int x, int y, int w, int h, int u, int v) {
    throw refused();
  }

  @Override
  public void fillRoundRect(int x, int y, int w, int h, int u, int v) {
    throw refused();
  }

  @Override
  public void drawOval(int x, int y, int w, int h) {
    throw refused();
  }

  @Override
  public void fillOval(int x, int y, int w, int h) {
    throw refused();
  }

  @Override
  public void drawArc(int x, int y, int w, int h, int u, int v) {
    throw refused();
  }

  @Override
  public void fillArc(int x, int y, int w, int h, int u, int v) {
    throw refused();
  }

  @Override
  public void drawPolyline(int[] x, int[] y, int n) {
    throw refused();
  }

  @Override
  public void drawPolygon(int[] x, int[] y, int n) {
    throw refused();
  }

  @Override
  public void fillPolygon(int[] x, int[] y, int n) {
    throw refused();
  }

  @Override
  public boolean drawImage(Image i, int x, int y, ImageObserver o) {
    throw refused();
  }

  @Override
  public boolean drawImage(Image i, int x, int y, int w, int h, ImageObserver o) {
    throw refused();
  }

  @Override
  public boolean drawImage(Image i, int x, int y, Color c, ImageObserver o) {
    throw refused();
  }

  @Override
  public boolean drawImage(Image i, int x, int y, int w, int h, Color c, ImageObserver o) {
    throw refused();
  }

  @Override
  public boolean drawImage(
      Image i, int a, int b, int c, int d, int e, int f, int g, int h, ImageObserver o) {
    throw refused();
  }

  @Override
  public boolean drawImage(
      Image i, int a, int b, int c, int d, int e, int f, int g, int h, Color k, ImageObserver o) {
    throw refused();
  }
}
