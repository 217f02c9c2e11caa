#include "scenes/files/dxf/write_dxf.h"

#include <dxflib/dl_dxf.h>
#include <dxflib/dl_writer_ascii.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <stdexcept>

#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

// Words in the format's own letters: ASCII, what is beyond it by its code point.
std::string encoded(const std::string& text) {
    std::string told;
    for (std::size_t at = 0; at < text.size();) {
        const unsigned char first = static_cast<unsigned char>(text[at]);
        const std::size_t length = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : first >= 0xc0 ? 2 : 1;
        unsigned long letter = length == 1 ? first : first & (0xffu >> (length + 1));
        for (std::size_t i = 1; i < length && at + i < text.size(); ++i)
            letter = (letter << 6) | (static_cast<unsigned char>(text[at + i]) & 0x3fu);
        at += length;
        if (letter < 0x20 || letter == 0x7f || letter > 0xffff)
            told += '?';
        else
            told += letter < 0x7f ? std::string(1, static_cast<char>(letter)) : words("\\U+%04lX", letter);
    }
    return told;
}

// Keeps what dxflib writes in memory, with numbers of our own making: dxflib's depend on the locale.
class TextWriter : public DL_WriterA {
  public:
    TextWriter() : DL_WriterA("", DL_Codes::AC1015) {}  // its own file is never opened

    void dxfReal(int code, double value) const override {
        if (!std::isfinite(value)) throw std::invalid_argument("a number for a DXF file is not finite");
        char digits[64];
        const auto end = std::to_chars(digits, digits + sizeof digits, value + 0.0);
        std::string number(digits, end.ptr);
        if (number.find_first_of(".e") == std::string::npos) number += ".0";
        group(code, number);
    }
    void dxfInt(int code, int value) const override { group(code, std::to_string(value)); }
    void dxfHex(int code, int value) const override { group(code, words("%X", value)); }
    void dxfString(int code, const char* value) const override { group(code, value); }
    void dxfString(int code, const std::string& value) const override { group(code, value); }

    const std::string& text() const { return text_; }

  private:
    void group(int code, const std::string& value) const {
        std::string number = std::to_string(code);
        text_ += std::string(number.size() < 3 ? 3 - number.size() : 0, ' ') + number + "\n" + value + "\n";
    }
    mutable std::string text_;
};

const char* stroke_name(DxfStroke stroke) {
    if (stroke == DxfStroke::continuous) return "CONTINUOUS";
    return stroke == DxfStroke::dashed ? "DASHED" : "DASHDOT";
}

void write_linetypes(DL_Dxf& dxf, TextWriter& out) {
    out.tableLinetypes(5);
    dxf.writeLinetype(out, DL_LinetypeData("BYBLOCK", "", 0, 0, 0.0));
    dxf.writeLinetype(out, DL_LinetypeData("BYLAYER", "", 0, 0, 0.0));
    dxf.writeLinetype(out, DL_LinetypeData("CONTINUOUS", "", 0, 0, 0.0));
    double dashed[] = {3.0, -1.5}, dash_dot[] = {6.0, -1.5, 0.5, -1.5};
    dxf.writeLinetype(out, DL_LinetypeData("DASHED", "", 0, 2, 4.5, dashed));
    dxf.writeLinetype(out, DL_LinetypeData("DASHDOT", "", 0, 4, 9.5, dash_dot));
    out.tableEnd();
}

void write_layers(DL_Dxf& dxf, TextWriter& out, const std::vector<DxfLayer>& layers) {
    out.tableLayers(static_cast<int>(layers.size()) + 1);
    dxf.writeLayer(out, DL_LayerData("0", 0), DL_Attributes("", 7, -1, "CONTINUOUS", 1.0));
    for (const DxfLayer& layer : layers)
        dxf.writeLayer(out, DL_LayerData(layer.name, 0),
                       DL_Attributes("", layer.colour, -1, stroke_name(layer.stroke), 1.0));
    out.tableEnd();
}

void write_tables(DL_Dxf& dxf, TextWriter& out, const std::vector<DxfLayer>& layers) {
    out.sectionTables();
    dxf.writeVPort(out);
    write_linetypes(dxf, out);
    write_layers(dxf, out, layers);
    out.tableStyle(1);
    dxf.writeStyle(out, DL_StyleData("Standard", 0, 0.0, 1.0, 0.0, 0, 2.5, "txt", ""));
    out.tableEnd();
    dxf.writeView(out);
    dxf.writeUcs(out);
    out.tableAppid(1);
    dxf.writeAppid(out, "ACAD");  // the format wants this one
    out.tableEnd();
    dxf.writeDimStyle(out, 2.5, 1.25, 0.625, 0.625, 2.5);
    dxf.writeBlockRecord(out);
    out.tableEnd();
    out.sectionEnd();
}

void write_blocks(DL_Dxf& dxf, TextWriter& out) {
    out.sectionBlocks();
    for (const char* name : {"*Model_Space", "*Paper_Space", "*Paper_Space0"}) {
        dxf.writeBlock(out, DL_BlockData(name, 0, 0.0, 0.0, 0.0));
        dxf.writeEndBlock(out, name);
    }
    out.sectionEnd();
}

// 0 to 360, and never 360 itself by rounding.
double turned_into_range(double rad) {
    double deg = std::fmod(rad / degree, 360.0);
    if (deg < 0.0) deg += 360.0;
    return deg >= 360.0 ? 0.0 : deg;
}

struct EntityWriter {
    DL_Dxf& dxf;
    TextWriter& out;
    DL_Attributes attributes;

    void operator()(const DxfLine& e) const {
        dxf.writeLine(out, DL_LineData(e.start.x(), e.start.y(), 0.0, e.end.x(), e.end.y(), 0.0), attributes);
    }
    void operator()(const DxfArc& e) const {
        dxf.writeArc(out,
                     DL_ArcData(e.centre.x(), e.centre.y(), 0.0, e.radius, turned_into_range(e.from),
                                turned_into_range(e.to)),
                     attributes);
    }
    void operator()(const DxfCircle& e) const {
        dxf.writeCircle(out, DL_CircleData(e.centre.x(), e.centre.y(), 0.0, e.radius), attributes);
    }
    void operator()(const DxfText& e) const {
        dxf.writeText(out,
                      DL_TextData(e.at.x(), e.at.y(), 0.0, e.at.x(), e.at.y(), 0.0, e.height, 1.0, 0, 0, 0,
                                  encoded(e.words), "Standard", 0.0),
                      attributes);
    }
};

void check_layer(const DxfDrawing& drawing, const std::string& name) {
    const auto same = [&](const DxfLayer& layer) { return layer.name == name; };
    if (std::none_of(drawing.layers.begin(), drawing.layers.end(), same))
        throw std::invalid_argument("there is no layer " + name);
}

}  // namespace

DxfEntity dxf_piece(const std::string& layer, const tool::Piece& piece) {
    if (!piece.is_arc()) return {layer, DxfLine{piece.start, piece.end}};
    const Vec2 first = (piece.sweep > 0.0 ? piece.start : piece.end) - piece.centre;
    const Vec2 last = (piece.sweep > 0.0 ? piece.end : piece.start) - piece.centre;
    return {layer, DxfArc{piece.centre, piece.radius, std::atan2(first.y(), first.x()),
                          std::atan2(last.y(), last.x())}};
}

std::string dxf_text(const DxfDrawing& drawing) {
    for (const DxfEntity& entity : drawing.entities) check_layer(drawing, entity.layer);
    DL_Dxf dxf;
    TextWriter out;
    dxf.writeHeader(out);
    out.dxfString(9, "$INSUNITS");
    out.dxfInt(70, 4);
    out.dxfString(9, "$MEASUREMENT");
    out.dxfInt(70, 1);
    out.sectionEnd();
    write_tables(dxf, out, drawing.layers);
    write_blocks(dxf, out);
    out.sectionEntities();
    for (const DxfEntity& entity : drawing.entities)
        std::visit(EntityWriter{dxf, out, DL_Attributes(entity.layer, 256, -1, "BYLAYER", 1.0)}, entity.what);
    out.sectionEnd();
    dxf.writeObjects(out);
    dxf.writeObjectsEnd(out);
    out.dxfEOF();
    return out.text();
}

}  // namespace overbend::files
