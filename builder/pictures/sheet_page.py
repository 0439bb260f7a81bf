"""Pages of sheets to pictures. The only module that knows the library that draws PDFs."""

import io

import pypdfium2


def draw_sheet_page(pdf: bytes, number: int, width: int) -> bytes:
    """Draw a page of a PDF, counted from 1, as WebP, so many points wide. Raises IndexError where there is no such page."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        if not 1 <= number <= len(document):
            raise IndexError(f"page {number} of {len(document)}")
        page = document[number - 1]
        image = page.render(scale=width / page.get_width()).to_pil()
        packed = io.BytesIO()
        image.convert("RGB").save(packed, "WEBP", quality=70, method=6)
        return packed.getvalue()
    finally:
        document.close()


def draw_page_without_paper(pdf: bytes, width: int) -> bytes:
    """Draw the first page of a PDF as PNG, so many points wide; where nothing is printed, what is behind it shows."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        page = document[0]
        image = page.render(scale=width / page.get_width(), fill_color=(255, 255, 255, 0), may_draw_forms=False).to_pil()
        packed = io.BytesIO()
        image.convert("RGBA").save(packed, "PNG")
        return packed.getvalue()
    finally:
        document.close()
