#include "io/belt_glb.h"

#include "io/picture/colour.h"
#include "io/report/view_fields.h"
#include "io/roll_mesh.h"
#include "io/version.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>

namespace swale {

namespace {

using Json = nlohmann::ordered_json;

// Codes of glTF 2.0, section 3.6.2.
constexpr int float_type = 5126, byte_type = 5121, index_type = 5125;
constexpr int vertex_buffer = 34962, index_buffer = 34963;

/// Triangles with a colour at every corner.
struct ColouredMesh {
    std::string name;
    std::vector<Eigen::Vector3d> points;  ///< [mm], z up
    std::vector<Colour> colours;
    std::vector<std::uint32_t> corners;
};

/// The light of colours as glTF counts it: the sRGB transfer function, IEC 61966-2-1.
unsigned char linear(unsigned char part) {
    const double shown = part / 255.0;
    const double light = shown <= 0.04045 ? shown / 12.92 : std::pow((shown + 0.055) / 1.055, 2.4);
    return static_cast<unsigned char>(std::lround(255 * light));
}

ColouredMesh belt_mesh(const StateResult& state, const std::vector<double>& held) {
    const ViewField& field = view_fields().front();
    const FieldRange range = range_of(field, state, held);
    const ColourScale scale = colour_scale(range.low, range.high, field.both_signs);
    const BeltSurface& surface = state.surface;
    ColouredMesh mesh{"belt, " + state.name, {}, {}, {}};
    for (size_t k = 0; k < surface.points.size(); ++k) {
        mesh.points.push_back(surface.points[k].position);
        mesh.colours.push_back(scale.at(field.value(state, k)));
    }
    for (int i = 0; i + 1 < surface.along; ++i)
        for (int j = 0; j + 1 < surface.across; ++j) {
            const auto a = static_cast<std::uint32_t>(i * surface.across + j),
                       b = a + static_cast<std::uint32_t>(surface.across);
            for (const std::uint32_t corner : {a, b, b + 1, a, b + 1, a + 1}) mesh.corners.push_back(corner);
        }
    return mesh;
}

ColouredMesh roll_glb(const NamedRoll& named) {
    const RollMesh shell = roll_mesh(named.roll, 48, 3);
    ColouredMesh mesh{named.name, shell.points, std::vector<Colour>(shell.points.size(), ink::steel), {}};
    for (const std::vector<int>& cell : shell.cells)
        for (size_t k = 1; k + 1 < cell.size(); ++k)
            for (const int corner : {cell[0], cell[k], cell[k + 1]}) mesh.corners.push_back(static_cast<std::uint32_t>(corner));
    return mesh;
}

/// The file while it grows: the description and the one binary buffer.
struct Glb {
    Json json{{"asset", {{"version", "2.0"}, {"generator", "swale " + version()}}}, {"scene", 0}};
    std::string bytes;

    template <class Number>
    void append(Number number) {
        char raw[sizeof(Number)];
        std::memcpy(raw, &number, sizeof(Number));
        bytes.append(raw, sizeof(Number));
    }
    /// The accessor of what was appended since `from`.
    int accessor(size_t from, int target, int type, size_t count, const char* shape) {
        json["bufferViews"].push_back(
            {{"buffer", 0}, {"byteOffset", from}, {"byteLength", bytes.size() - from}, {"target", target}});
        const int view = static_cast<int>(json["bufferViews"].size()) - 1;
        json["accessors"].push_back({{"bufferView", view}, {"componentType", type}, {"count", count}, {"type", shape}});
        return view;
    }
};

Eigen::Vector3f in_metres(const Eigen::Vector3d& point) {
    return Eigen::Vector3d(point.x(), point.z(), -point.y()).cast<float>() / 1000.0F;
}

int add_points(const ColouredMesh& mesh, Glb& glb) {
    const size_t from = glb.bytes.size();
    Eigen::Vector3f low = Eigen::Vector3f::Constant(std::numeric_limits<float>::max()), high = -low;
    for (const Eigen::Vector3d& point : mesh.points) {
        const Eigen::Vector3f metres = in_metres(point);
        low = low.cwiseMin(metres);
        high = high.cwiseMax(metres);
        for (const float part : metres) glb.append(part);
    }
    const int accessor = glb.accessor(from, vertex_buffer, float_type, mesh.points.size(), "VEC3");
    glb.json["accessors"].back()["min"] = {low.x(), low.y(), low.z()};
    glb.json["accessors"].back()["max"] = {high.x(), high.y(), high.z()};
    return accessor;
}

int add_colours(const ColouredMesh& mesh, Glb& glb) {
    const size_t from = glb.bytes.size();
    for (const Colour colour : mesh.colours)
        for (const unsigned char part :
             {linear(colour.red), linear(colour.green), linear(colour.blue), static_cast<unsigned char>(255)})
            glb.append(part);
    const int accessor = glb.accessor(from, vertex_buffer, byte_type, mesh.colours.size(), "VEC4");
    glb.json["accessors"].back()["normalized"] = true;
    return accessor;
}

int add_corners(const ColouredMesh& mesh, Glb& glb) {
    const size_t from = glb.bytes.size();
    for (const std::uint32_t corner : mesh.corners) glb.append(corner);
    return glb.accessor(from, index_buffer, index_type, mesh.corners.size(), "SCALAR");
}

void add_mesh(const ColouredMesh& mesh, Glb& glb) {
    const int points = add_points(mesh, glb), colours = add_colours(mesh, glb), corners = add_corners(mesh, glb);
    const int number = static_cast<int>(glb.json["meshes"].size());
    glb.json["meshes"].push_back(
        {{"name", mesh.name},
         {"primitives",
          {{{"attributes", {{"POSITION", points}, {"COLOR_0", colours}}}, {"indices", corners}, {"material", 0}}}}});
    glb.json["nodes"].push_back({{"name", mesh.name}, {"mesh", number}});
    glb.json["scenes"][0]["nodes"].push_back(number);
}

void append_number(std::string& bytes, std::uint32_t number) {
    for (int shift = 0; shift < 32; shift += 8) bytes += static_cast<char>(number >> shift & 0xFFu);
}

void append_chunk(std::string& file, std::uint32_t kind, std::string content, char filler) {
    while (content.size() % 4 != 0) content += filler;
    append_number(file, static_cast<std::uint32_t>(content.size()));
    append_number(file, kind);
    file += content;
}

}  // namespace

std::string belt_glb(const RunRecord& record, const StateResult& state) {
    Glb glb;
    glb.json["materials"].push_back(
        {{"pbrMetallicRoughness", {{"metallicFactor", 0.0}, {"roughnessFactor", 0.9}}}, {"doubleSided", true}});
    add_mesh(belt_mesh(state, held_lines(record.transition.layout, state)), glb);
    for (const NamedRoll& roll : record.result.rolls) add_mesh(roll_glb(roll), glb);
    glb.json["buffers"].push_back({{"byteLength", glb.bytes.size()}});
    std::string chunks;
    append_chunk(chunks, 0x4E4F534A, glb.json.dump(-1, ' ', false, Json::error_handler_t::replace), ' ');
    append_chunk(chunks, 0x004E4942, glb.bytes, '\0');
    std::string file = "glTF";
    append_number(file, 2);
    append_number(file, static_cast<std::uint32_t>(12 + chunks.size()));
    return file + chunks;
}

}  // namespace swale
