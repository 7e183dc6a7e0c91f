"""The schemas as plain Python checks: written by `python -m roomlint.schemas.make_compiled`."""

# fmt: off
import re


class NotValid(ValueError):
    """The data do not pass the schema; jsonschema tells why."""


PATTERNS_ROOM = {
    '^[0-9]{4}-[0-9]{2}-[0-9]{2}$': re.compile('^[0-9]{4}-[0-9]{2}-[0-9]{2}\\Z'),
    '^((M|U|UH|T|B)[+-](0[0-9]{2}|1[0-7][0-9]|180)|M[+-]SC|LFE[12]?)$': re.compile('^((M|U|UH|T|B)[+-](0[0-9]{2}|1[0-7][0-9]|180)|M[+-]SC|LFE[12]?)\\Z'),
    '^[a-z0-9][a-z0-9-]{0,62}$': re.compile('^[a-z0-9][a-z0-9-]{0,62}\\Z')
}

NoneType = type(None)

def check_room(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['roomlint', 'room']) - data.keys()
        if data__missing_keys:
            raise NotValid
        data_keys = set(data.keys())
        if "roomlint" in data_keys:
            data_keys.remove("roomlint")
            data__roomlint = data["roomlint"]
            if not isinstance(data__roomlint, (int)) and not (isinstance(data__roomlint, float) and data__roomlint.is_integer()) or isinstance(data__roomlint, bool):
                raise NotValid
            if not (isinstance(data__roomlint, (int, float)) and not isinstance(data__roomlint, bool) and data__roomlint == 1):
                raise NotValid
        if "project" in data_keys:
            data_keys.remove("project")
            data__project = data["project"]
            if not isinstance(data__project, (dict)):
                raise NotValid
            data__project_is_dict = isinstance(data__project, dict)
            if data__project_is_dict:
                data__project_keys = set(data__project.keys())
                if "code" in data__project_keys:
                    data__project_keys.remove("code")
                    data__project__code = data__project["code"]
                    if not isinstance(data__project__code, (str)):
                        raise NotValid
                    if isinstance(data__project__code, str):
                        data__project__code_len = len(data__project__code)
                        if data__project__code_len < 1:
                            raise NotValid
                        if data__project__code_len > 63:
                            raise NotValid
                if "title" in data__project_keys:
                    data__project_keys.remove("title")
                    data__project__title = data__project["title"]
                    if not isinstance(data__project__title, (str)):
                        raise NotValid
                    if isinstance(data__project__title, str):
                        data__project__title_len = len(data__project__title)
                        if data__project__title_len < 1:
                            raise NotValid
                        if data__project__title_len > 400:
                            raise NotValid
                if "about" in data__project_keys:
                    data__project_keys.remove("about")
                    data__project__about = data__project["about"]
                    if not isinstance(data__project__about, (str)):
                        raise NotValid
                    if isinstance(data__project__about, str):
                        data__project__about_len = len(data__project__about)
                        if data__project__about_len < 1:
                            raise NotValid
                        if data__project__about_len > 4000:
                            raise NotValid
                if "stage" in data__project_keys:
                    data__project_keys.remove("stage")
                    data__project__stage = data__project["stage"]
                    if not isinstance(data__project__stage, (str)):
                        raise NotValid
                    if not (isinstance(data__project__stage, str) and data__project__stage == 'survey' or isinstance(data__project__stage, str) and data__project__stage == 'design' or isinstance(data__project__stage, str) and data__project__stage == 'rough-in' or isinstance(data__project__stage, str) and data__project__stage == 'handover'):
                        raise NotValid
                if "region" in data__project_keys:
                    data__project_keys.remove("region")
                    data__project__region = data__project["region"]
                    if not isinstance(data__project__region, (str)):
                        raise NotValid
                    if not (isinstance(data__project__region, str) and data__project__region == 'us' or isinstance(data__project__region, str) and data__project__region == 'ca' or isinstance(data__project__region, str) and data__project__region == 'uk' or isinstance(data__project__region, str) and data__project__region == 'eu' or isinstance(data__project__region, str) and data__project__region == 'au' or isinstance(data__project__region, str) and data__project__region == 'nz' or isinstance(data__project__region, str) and data__project__region == 'jp' or isinstance(data__project__region, str) and data__project__region == 'other'):
                        raise NotValid
                if "reference" in data__project_keys:
                    data__project_keys.remove("reference")
                    data__project__reference = data__project["reference"]
                    if not isinstance(data__project__reference, (str)):
                        raise NotValid
                    if not (isinstance(data__project__reference, str) and data__project__reference == 'home' or isinstance(data__project__reference, str) and data__project__reference == 'critical'):
                        raise NotValid
                if "children" in data__project_keys:
                    data__project_keys.remove("children")
                    data__project__children = data__project["children"]
                    if not isinstance(data__project__children, (bool)):
                        raise NotValid
                if "codes" in data__project_keys:
                    data__project_keys.remove("codes")
                    data__project__codes = data__project["codes"]
                    if not isinstance(data__project__codes, (dict)):
                        raise NotValid
                    data__project__codes_is_dict = isinstance(data__project__codes, dict)
                    if data__project__codes_is_dict:
                        data__project__codes_keys = set(data__project__codes.keys())
                        if "electrical" in data__project__codes_keys:
                            data__project__codes_keys.remove("electrical")
                            data__project__codes__electrical = data__project__codes["electrical"]
                            if not isinstance(data__project__codes__electrical, (str)):
                                raise NotValid
                            if not (isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'nec2017' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'nec2020' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'nec2023' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'nec2026' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'bs7671' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'iec60364' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'asnzs3000' or isinstance(data__project__codes__electrical, str) and data__project__codes__electrical == 'other'):
                                raise NotValid
                        if "building" in data__project__codes_keys:
                            data__project__codes_keys.remove("building")
                            data__project__codes__building = data__project__codes["building"]
                            if not isinstance(data__project__codes__building, (str)):
                                raise NotValid
                            if not (isinstance(data__project__codes__building, str) and data__project__codes__building == 'irc2018' or isinstance(data__project__codes__building, str) and data__project__codes__building == 'irc2021' or isinstance(data__project__codes__building, str) and data__project__codes__building == 'irc2024' or isinstance(data__project__codes__building, str) and data__project__codes__building == 'other'):
                                raise NotValid
                        if "seismic_category" in data__project__codes_keys:
                            data__project__codes_keys.remove("seismic_category")
                            data__project__codes__seismiccategory = data__project__codes["seismic_category"]
                            if not isinstance(data__project__codes__seismiccategory, (str)):
                                raise NotValid
                            if not (isinstance(data__project__codes__seismiccategory, str) and data__project__codes__seismiccategory == 'a' or isinstance(data__project__codes__seismiccategory, str) and data__project__codes__seismiccategory == 'b' or isinstance(data__project__codes__seismiccategory, str) and data__project__codes__seismiccategory == 'c' or isinstance(data__project__codes__seismiccategory, str) and data__project__codes__seismiccategory == 'd' or isinstance(data__project__codes__seismiccategory, str) and data__project__codes__seismiccategory == 'e' or isinstance(data__project__codes__seismiccategory, str) and data__project__codes__seismiccategory == 'f'):
                                raise NotValid
                        if data__project__codes_keys:
                            raise NotValid
                if data__project_keys:
                    raise NotValid
        if "survey" in data_keys:
            data_keys.remove("survey")
            data__survey = data["survey"]
            if not isinstance(data__survey, (dict)):
                raise NotValid
            data__survey_is_dict = isinstance(data__survey, dict)
            if data__survey_is_dict:
                data__survey_keys = set(data__survey.keys())
                if "tolerance" in data__survey_keys:
                    data__survey_keys.remove("tolerance")
                    data__survey__tolerance = data__survey["tolerance"]
                    room____defs_length(data__survey__tolerance)
                if "temperature" in data__survey_keys:
                    data__survey_keys.remove("temperature")
                    data__survey__temperature = data__survey["temperature"]
                    room____defs_temperature(data__survey__temperature)
                if "by" in data__survey_keys:
                    data__survey_keys.remove("by")
                    data__survey__by = data__survey["by"]
                    if not isinstance(data__survey__by, (str)):
                        raise NotValid
                    if isinstance(data__survey__by, str):
                        data__survey__by_len = len(data__survey__by)
                        if data__survey__by_len < 1:
                            raise NotValid
                        if data__survey__by_len > 400:
                            raise NotValid
                if "on" in data__survey_keys:
                    data__survey_keys.remove("on")
                    data__survey__on = data__survey["on"]
                    if not isinstance(data__survey__on, (str)):
                        raise NotValid
                    if isinstance(data__survey__on, str):
                        data__survey__on_len = len(data__survey__on)
                        if data__survey__on_len < 1:
                            raise NotValid
                        if data__survey__on_len > 10:
                            raise NotValid
                if data__survey_keys:
                    raise NotValid
        if "room" in data_keys:
            data_keys.remove("room")
            data__room = data["room"]
            if not isinstance(data__room, (dict)):
                raise NotValid
            data__room_is_dict = isinstance(data__room, dict)
            if data__room_is_dict:
                data__room_keys = set(data__room.keys())
                if "size" in data__room_keys:
                    data__room_keys.remove("size")
                    data__room__size = data__room["size"]
                    if not isinstance(data__room__size, (dict)):
                        raise NotValid
                    data__room__size_is_dict = isinstance(data__room__size, dict)
                    if data__room__size_is_dict:
                        data__room__size__missing_keys = set(['width', 'length']) - data__room__size.keys()
                        if data__room__size__missing_keys:
                            raise NotValid
                        data__room__size_keys = set(data__room__size.keys())
                        if "width" in data__room__size_keys:
                            data__room__size_keys.remove("width")
                            data__room__size__width = data__room__size["width"]
                            room____defs_length(data__room__size__width)
                        if "length" in data__room__size_keys:
                            data__room__size_keys.remove("length")
                            data__room__size__length = data__room__size["length"]
                            room____defs_length(data__room__size__length)
                        if data__room__size_keys:
                            raise NotValid
                if "outline" in data__room_keys:
                    data__room_keys.remove("outline")
                    data__room__outline = data__room["outline"]
                    if not isinstance(data__room__outline, (list, tuple)):
                        raise NotValid
                    data__room__outline_is_list = isinstance(data__room__outline, (list, tuple))
                    if data__room__outline_is_list:
                        data__room__outline_len = len(data__room__outline)
                        if data__room__outline_len < 3:
                            raise NotValid
                        if data__room__outline_len > 64:
                            raise NotValid
                        for data__room__outline_x, data__room__outline_item in enumerate(data__room__outline):
                            if not isinstance(data__room__outline_item, (dict)):
                                raise NotValid
                            data__room__outline_item_is_dict = isinstance(data__room__outline_item, dict)
                            if data__room__outline_item_is_dict:
                                data__room__outline_item__missing_keys = set(['from_left', 'from_front', 'wall']) - data__room__outline_item.keys()
                                if data__room__outline_item__missing_keys:
                                    raise NotValid
                                data__room__outline_item_keys = set(data__room__outline_item.keys())
                                if "from_left" in data__room__outline_item_keys:
                                    data__room__outline_item_keys.remove("from_left")
                                    data__room__outline_item__fromleft = data__room__outline_item["from_left"]
                                    room____defs_length(data__room__outline_item__fromleft)
                                if "from_front" in data__room__outline_item_keys:
                                    data__room__outline_item_keys.remove("from_front")
                                    data__room__outline_item__fromfront = data__room__outline_item["from_front"]
                                    room____defs_length(data__room__outline_item__fromfront)
                                if "wall" in data__room__outline_item_keys:
                                    data__room__outline_item_keys.remove("wall")
                                    data__room__outline_item__wall = data__room__outline_item["wall"]
                                    room____defs_id(data__room__outline_item__wall)
                                if data__room__outline_item_keys:
                                    raise NotValid
                if "ceiling" in data__room_keys:
                    data__room_keys.remove("ceiling")
                    data__room__ceiling = data__room["ceiling"]
                    if not isinstance(data__room__ceiling, (dict)):
                        raise NotValid
                    data__room__ceiling_is_dict = isinstance(data__room__ceiling, dict)
                    if data__room__ceiling_is_dict:
                        data__room__ceiling__missing_keys = set(['shape']) - data__room__ceiling.keys()
                        if data__room__ceiling__missing_keys:
                            raise NotValid
                        data__room__ceiling_keys = set(data__room__ceiling.keys())
                        if "shape" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("shape")
                            data__room__ceiling__shape = data__room__ceiling["shape"]
                            if not isinstance(data__room__ceiling__shape, (str)):
                                raise NotValid
                            if not (isinstance(data__room__ceiling__shape, str) and data__room__ceiling__shape == 'flat' or isinstance(data__room__ceiling__shape, str) and data__room__ceiling__shape == 'mono-pitch' or isinstance(data__room__ceiling__shape, str) and data__room__ceiling__shape == 'gable' or isinstance(data__room__ceiling__shape, str) and data__room__ceiling__shape == 'corners'):
                                raise NotValid
                        if "height" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("height")
                            data__room__ceiling__height = data__room__ceiling["height"]
                            room____defs_length(data__room__ceiling__height)
                        if "low" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("low")
                            data__room__ceiling__low = data__room__ceiling["low"]
                            room____defs_length(data__room__ceiling__low)
                        if "high" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("high")
                            data__room__ceiling__high = data__room__ceiling["high"]
                            room____defs_length(data__room__ceiling__high)
                        if "low_side" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("low_side")
                            data__room__ceiling__lowside = data__room__ceiling["low_side"]
                            if not isinstance(data__room__ceiling__lowside, (str)):
                                raise NotValid
                            if not (isinstance(data__room__ceiling__lowside, str) and data__room__ceiling__lowside == 'left' or isinstance(data__room__ceiling__lowside, str) and data__room__ceiling__lowside == 'right' or isinstance(data__room__ceiling__lowside, str) and data__room__ceiling__lowside == 'front' or isinstance(data__room__ceiling__lowside, str) and data__room__ceiling__lowside == 'rear'):
                                raise NotValid
                        if "ridge" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("ridge")
                            data__room__ceiling__ridge = data__room__ceiling["ridge"]
                            if not isinstance(data__room__ceiling__ridge, (str)):
                                raise NotValid
                            if not (isinstance(data__room__ceiling__ridge, str) and data__room__ceiling__ridge == 'front-to-rear' or isinstance(data__room__ceiling__ridge, str) and data__room__ceiling__ridge == 'left-to-right'):
                                raise NotValid
                        if "ridge_at" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("ridge_at")
                            data__room__ceiling__ridgeat = data__room__ceiling["ridge_at"]
                            room____defs_length(data__room__ceiling__ridgeat)
                        if "heights" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("heights")
                            data__room__ceiling__heights = data__room__ceiling["heights"]
                            if not isinstance(data__room__ceiling__heights, (list, tuple)):
                                raise NotValid
                            data__room__ceiling__heights_is_list = isinstance(data__room__ceiling__heights, (list, tuple))
                            if data__room__ceiling__heights_is_list:
                                data__room__ceiling__heights_len = len(data__room__ceiling__heights)
                                if data__room__ceiling__heights_len > 64:
                                    raise NotValid
                                for data__room__ceiling__heights_x, data__room__ceiling__heights_item in enumerate(data__room__ceiling__heights):
                                    room____defs_length(data__room__ceiling__heights_item)
                        if "framing" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("framing")
                            data__room__ceiling__framing = data__room__ceiling["framing"]
                            room____defs_framing(data__room__ceiling__framing)
                        if "board" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("board")
                            data__room__ceiling__board = data__room__ceiling["board"]
                            room____defs_board(data__room__ceiling__board)
                        if "finish" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("finish")
                            data__room__ceiling__finish = data__room__ceiling["finish"]
                            if not isinstance(data__room__ceiling__finish, (str)):
                                raise NotValid
                            if not (isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'gypsum-on-studs' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'double-gypsum-on-steel' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'plaster-on-masonry' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'plaster-on-lath' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'concrete' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'concrete-block' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'painted-block' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'brick' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'painted-brick' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'glass' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'heavy-glass' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'double-glazing' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'wood-on-joists' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'parquet-on-concrete' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'wood-lining' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'vinyl' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'ceramic-tile' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'carpet-on-concrete' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'carpet-on-felt' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'curtain-light' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'curtain-medium' or isinstance(data__room__ceiling__finish, str) and data__room__ceiling__finish == 'curtain-heavy'):
                                raise NotValid
                        if "fire_rated" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("fire_rated")
                            data__room__ceiling__firerated = data__room__ceiling["fire_rated"]
                            if not isinstance(data__room__ceiling__firerated, (bool)):
                                raise NotValid
                        if "plenum" in data__room__ceiling_keys:
                            data__room__ceiling_keys.remove("plenum")
                            data__room__ceiling__plenum = data__room__ceiling["plenum"]
                            if not isinstance(data__room__ceiling__plenum, (bool)):
                                raise NotValid
                        if data__room__ceiling_keys:
                            raise NotValid
                if "floor" in data__room_keys:
                    data__room_keys.remove("floor")
                    data__room__floor = data__room["floor"]
                    if not isinstance(data__room__floor, (dict)):
                        raise NotValid
                    data__room__floor_is_dict = isinstance(data__room__floor, dict)
                    if data__room__floor_is_dict:
                        data__room__floor_keys = set(data__room__floor.keys())
                        if "framing" in data__room__floor_keys:
                            data__room__floor_keys.remove("framing")
                            data__room__floor__framing = data__room__floor["framing"]
                            room____defs_framing(data__room__floor__framing)
                        if "board" in data__room__floor_keys:
                            data__room__floor_keys.remove("board")
                            data__room__floor__board = data__room__floor["board"]
                            room____defs_board(data__room__floor__board)
                        if "finish" in data__room__floor_keys:
                            data__room__floor_keys.remove("finish")
                            data__room__floor__finish = data__room__floor["finish"]
                            if not isinstance(data__room__floor__finish, (str)):
                                raise NotValid
                            if not (isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'gypsum-on-studs' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'double-gypsum-on-steel' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'plaster-on-masonry' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'plaster-on-lath' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'concrete' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'concrete-block' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'painted-block' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'brick' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'painted-brick' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'glass' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'heavy-glass' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'double-glazing' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'wood-on-joists' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'parquet-on-concrete' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'wood-lining' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'vinyl' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'ceramic-tile' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'carpet-on-concrete' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'carpet-on-felt' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'curtain-light' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'curtain-medium' or isinstance(data__room__floor__finish, str) and data__room__floor__finish == 'curtain-heavy'):
                                raise NotValid
                        if "fire_rated" in data__room__floor_keys:
                            data__room__floor_keys.remove("fire_rated")
                            data__room__floor__firerated = data__room__floor["fire_rated"]
                            if not isinstance(data__room__floor__firerated, (bool)):
                                raise NotValid
                        if "plenum" in data__room__floor_keys:
                            data__room__floor_keys.remove("plenum")
                            data__room__floor__plenum = data__room__floor["plenum"]
                            if not isinstance(data__room__floor__plenum, (bool)):
                                raise NotValid
                        if data__room__floor_keys:
                            raise NotValid
                if "walls" in data__room_keys:
                    data__room_keys.remove("walls")
                    data__room__walls = data__room["walls"]
                    if not isinstance(data__room__walls, (list, tuple)):
                        raise NotValid
                    data__room__walls_is_list = isinstance(data__room__walls, (list, tuple))
                    if data__room__walls_is_list:
                        data__room__walls_len = len(data__room__walls)
                        if data__room__walls_len > 64:
                            raise NotValid
                        for data__room__walls_x, data__room__walls_item in enumerate(data__room__walls):
                            if not isinstance(data__room__walls_item, (dict)):
                                raise NotValid
                            data__room__walls_item_is_dict = isinstance(data__room__walls_item, dict)
                            if data__room__walls_item_is_dict:
                                data__room__walls_item__missing_keys = set(['id']) - data__room__walls_item.keys()
                                if data__room__walls_item__missing_keys:
                                    raise NotValid
                                data__room__walls_item_keys = set(data__room__walls_item.keys())
                                if "id" in data__room__walls_item_keys:
                                    data__room__walls_item_keys.remove("id")
                                    data__room__walls_item__id = data__room__walls_item["id"]
                                    room____defs_id(data__room__walls_item__id)
                                if "framing" in data__room__walls_item_keys:
                                    data__room__walls_item_keys.remove("framing")
                                    data__room__walls_item__framing = data__room__walls_item["framing"]
                                    room____defs_framing(data__room__walls_item__framing)
                                if "board" in data__room__walls_item_keys:
                                    data__room__walls_item_keys.remove("board")
                                    data__room__walls_item__board = data__room__walls_item["board"]
                                    room____defs_board(data__room__walls_item__board)
                                if "finish" in data__room__walls_item_keys:
                                    data__room__walls_item_keys.remove("finish")
                                    data__room__walls_item__finish = data__room__walls_item["finish"]
                                    if not isinstance(data__room__walls_item__finish, (str)):
                                        raise NotValid
                                    if not (isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'gypsum-on-studs' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'double-gypsum-on-steel' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'plaster-on-masonry' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'plaster-on-lath' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'concrete' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'concrete-block' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'painted-block' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'brick' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'painted-brick' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'glass' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'heavy-glass' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'double-glazing' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'wood-on-joists' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'parquet-on-concrete' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'wood-lining' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'vinyl' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'ceramic-tile' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'carpet-on-concrete' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'carpet-on-felt' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'curtain-light' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'curtain-medium' or isinstance(data__room__walls_item__finish, str) and data__room__walls_item__finish == 'curtain-heavy'):
                                        raise NotValid
                                if "fire_rated" in data__room__walls_item_keys:
                                    data__room__walls_item_keys.remove("fire_rated")
                                    data__room__walls_item__firerated = data__room__walls_item["fire_rated"]
                                    if not isinstance(data__room__walls_item__firerated, (bool)):
                                        raise NotValid
                                if "plenum" in data__room__walls_item_keys:
                                    data__room__walls_item_keys.remove("plenum")
                                    data__room__walls_item__plenum = data__room__walls_item["plenum"]
                                    if not isinstance(data__room__walls_item__plenum, (bool)):
                                        raise NotValid
                                if data__room__walls_item_keys:
                                    raise NotValid
                if "level" in data__room_keys:
                    data__room_keys.remove("level")
                    data__room__level = data__room["level"]
                    if not isinstance(data__room__level, (str)):
                        raise NotValid
                    if not (isinstance(data__room__level, str) and data__room__level == 'basement' or isinstance(data__room__level, str) and data__room__level == 'ground' or isinstance(data__room__level, str) and data__room__level == 'upper' or isinstance(data__room__level, str) and data__room__level == 'attic'):
                        raise NotValid
                if "openings" in data__room_keys:
                    data__room_keys.remove("openings")
                    data__room__openings = data__room["openings"]
                    if not isinstance(data__room__openings, (list, tuple)):
                        raise NotValid
                    data__room__openings_is_list = isinstance(data__room__openings, (list, tuple))
                    if data__room__openings_is_list:
                        data__room__openings_len = len(data__room__openings)
                        if data__room__openings_len > 200:
                            raise NotValid
                        for data__room__openings_x, data__room__openings_item in enumerate(data__room__openings):
                            if not isinstance(data__room__openings_item, (dict)):
                                raise NotValid
                            data__room__openings_item_is_dict = isinstance(data__room__openings_item, dict)
                            if data__room__openings_item_is_dict:
                                data__room__openings_item__missing_keys = set(['id', 'kind', 'wall']) - data__room__openings_item.keys()
                                if data__room__openings_item__missing_keys:
                                    raise NotValid
                                data__room__openings_item_keys = set(data__room__openings_item.keys())
                                if "id" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("id")
                                    data__room__openings_item__id = data__room__openings_item["id"]
                                    room____defs_id(data__room__openings_item__id)
                                if "kind" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("kind")
                                    data__room__openings_item__kind = data__room__openings_item["kind"]
                                    if not isinstance(data__room__openings_item__kind, (str)):
                                        raise NotValid
                                    if not (isinstance(data__room__openings_item__kind, str) and data__room__openings_item__kind == 'door' or isinstance(data__room__openings_item__kind, str) and data__room__openings_item__kind == 'glass-door' or isinstance(data__room__openings_item__kind, str) and data__room__openings_item__kind == 'window' or isinstance(data__room__openings_item__kind, str) and data__room__openings_item__kind == 'opening'):
                                        raise NotValid
                                if "wall" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("wall")
                                    data__room__openings_item__wall = data__room__openings_item["wall"]
                                    if not isinstance(data__room__openings_item__wall, (str)):
                                        raise NotValid
                                    if isinstance(data__room__openings_item__wall, str):
                                        data__room__openings_item__wall_len = len(data__room__openings_item__wall)
                                        if data__room__openings_item__wall_len < 1:
                                            raise NotValid
                                        if data__room__openings_item__wall_len > 63:
                                            raise NotValid
                                if "from_wall_left" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("from_wall_left")
                                    data__room__openings_item__fromwallleft = data__room__openings_item["from_wall_left"]
                                    room____defs_length(data__room__openings_item__fromwallleft)
                                if "width" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("width")
                                    data__room__openings_item__width = data__room__openings_item["width"]
                                    room____defs_length(data__room__openings_item__width)
                                if "sill" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("sill")
                                    data__room__openings_item__sill = data__room__openings_item["sill"]
                                    room____defs_length(data__room__openings_item__sill)
                                if "height" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("height")
                                    data__room__openings_item__height = data__room__openings_item["height"]
                                    room____defs_length(data__room__openings_item__height)
                                if "hinge" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("hinge")
                                    data__room__openings_item__hinge = data__room__openings_item["hinge"]
                                    if not isinstance(data__room__openings_item__hinge, (str)):
                                        raise NotValid
                                    if not (isinstance(data__room__openings_item__hinge, str) and data__room__openings_item__hinge == 'left' or isinstance(data__room__openings_item__hinge, str) and data__room__openings_item__hinge == 'right'):
                                        raise NotValid
                                if "swing" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("swing")
                                    data__room__openings_item__swing = data__room__openings_item["swing"]
                                    if not isinstance(data__room__openings_item__swing, (str)):
                                        raise NotValid
                                    if not (isinstance(data__room__openings_item__swing, str) and data__room__openings_item__swing == 'in' or isinstance(data__room__openings_item__swing, str) and data__room__openings_item__swing == 'out' or isinstance(data__room__openings_item__swing, str) and data__room__openings_item__swing == 'sliding' or isinstance(data__room__openings_item__swing, str) and data__room__openings_item__swing == 'none'):
                                        raise NotValid
                                if "egress" in data__room__openings_item_keys:
                                    data__room__openings_item_keys.remove("egress")
                                    data__room__openings_item__egress = data__room__openings_item["egress"]
                                    if not isinstance(data__room__openings_item__egress, (bool)):
                                        raise NotValid
                                if data__room__openings_item_keys:
                                    raise NotValid
                if "obstacles" in data__room_keys:
                    data__room_keys.remove("obstacles")
                    data__room__obstacles = data__room["obstacles"]
                    if not isinstance(data__room__obstacles, (list, tuple)):
                        raise NotValid
                    data__room__obstacles_is_list = isinstance(data__room__obstacles, (list, tuple))
                    if data__room__obstacles_is_list:
                        data__room__obstacles_len = len(data__room__obstacles)
                        if data__room__obstacles_len > 200:
                            raise NotValid
                        for data__room__obstacles_x, data__room__obstacles_item in enumerate(data__room__obstacles):
                            if not isinstance(data__room__obstacles_item, (dict)):
                                raise NotValid
                            data__room__obstacles_item_is_dict = isinstance(data__room__obstacles_item, dict)
                            if data__room__obstacles_item_is_dict:
                                data__room__obstacles_item__missing_keys = set(['id', 'kind', 'from_left', 'from_front', 'width', 'depth']) - data__room__obstacles_item.keys()
                                if data__room__obstacles_item__missing_keys:
                                    raise NotValid
                                data__room__obstacles_item_keys = set(data__room__obstacles_item.keys())
                                if "id" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("id")
                                    data__room__obstacles_item__id = data__room__obstacles_item["id"]
                                    room____defs_id(data__room__obstacles_item__id)
                                if "kind" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("kind")
                                    data__room__obstacles_item__kind = data__room__obstacles_item["kind"]
                                    if not isinstance(data__room__obstacles_item__kind, (str)):
                                        raise NotValid
                                    if not (isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'post' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'soffit' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'beam' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'chimney-breast' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'duct' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'cabinet' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'stair' or isinstance(data__room__obstacles_item__kind, str) and data__room__obstacles_item__kind == 'riser'):
                                        raise NotValid
                                if "from_left" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("from_left")
                                    data__room__obstacles_item__fromleft = data__room__obstacles_item["from_left"]
                                    room____defs_length(data__room__obstacles_item__fromleft)
                                if "from_front" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("from_front")
                                    data__room__obstacles_item__fromfront = data__room__obstacles_item["from_front"]
                                    room____defs_length(data__room__obstacles_item__fromfront)
                                if "width" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("width")
                                    data__room__obstacles_item__width = data__room__obstacles_item["width"]
                                    room____defs_length(data__room__obstacles_item__width)
                                if "depth" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("depth")
                                    data__room__obstacles_item__depth = data__room__obstacles_item["depth"]
                                    room____defs_length(data__room__obstacles_item__depth)
                                if "bottom" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("bottom")
                                    data__room__obstacles_item__bottom = data__room__obstacles_item["bottom"]
                                    room____defs_length(data__room__obstacles_item__bottom)
                                if "top" in data__room__obstacles_item_keys:
                                    data__room__obstacles_item_keys.remove("top")
                                    data__room__obstacles_item__top = data__room__obstacles_item["top"]
                                    room____defs_length(data__room__obstacles_item__top)
                                if data__room__obstacles_item_keys:
                                    raise NotValid
                if data__room_keys:
                    raise NotValid
        if "treatments" in data_keys:
            data_keys.remove("treatments")
            data__treatments = data["treatments"]
            if not isinstance(data__treatments, (list, tuple)):
                raise NotValid
            data__treatments_is_list = isinstance(data__treatments, (list, tuple))
            if data__treatments_is_list:
                data__treatments_len = len(data__treatments)
                if data__treatments_len > 200:
                    raise NotValid
                for data__treatments_x, data__treatments_item in enumerate(data__treatments):
                    if not isinstance(data__treatments_item, (dict)):
                        raise NotValid
                    data__treatments_item_is_dict = isinstance(data__treatments_item, dict)
                    if data__treatments_item_is_dict:
                        data__treatments_item__missing_keys = set(['id', 'kind']) - data__treatments_item.keys()
                        if data__treatments_item__missing_keys:
                            raise NotValid
                        data__treatments_item_keys = set(data__treatments_item.keys())
                        if "id" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("id")
                            data__treatments_item__id = data__treatments_item["id"]
                            room____defs_id(data__treatments_item__id)
                        if "kind" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("kind")
                            data__treatments_item__kind = data__treatments_item["kind"]
                            if not isinstance(data__treatments_item__kind, (str)):
                                raise NotValid
                            if not (isinstance(data__treatments_item__kind, str) and data__treatments_item__kind == 'absorber' or isinstance(data__treatments_item__kind, str) and data__treatments_item__kind == 'diffuser' or isinstance(data__treatments_item__kind, str) and data__treatments_item__kind == 'curtain' or isinstance(data__treatments_item__kind, str) and data__treatments_item__kind == 'carpet' or isinstance(data__treatments_item__kind, str) and data__treatments_item__kind == 'bass-trap' or isinstance(data__treatments_item__kind, str) and data__treatments_item__kind == 'canopy'):
                                raise NotValid
                        if "on" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("on")
                            data__treatments_item__on = data__treatments_item["on"]
                            if not isinstance(data__treatments_item__on, (str)):
                                raise NotValid
                            if isinstance(data__treatments_item__on, str):
                                data__treatments_item__on_len = len(data__treatments_item__on)
                                if data__treatments_item__on_len < 1:
                                    raise NotValid
                                if data__treatments_item__on_len > 63:
                                    raise NotValid
                        if "from_wall_left" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("from_wall_left")
                            data__treatments_item__fromwallleft = data__treatments_item["from_wall_left"]
                            room____defs_length(data__treatments_item__fromwallleft)
                        if "from_left" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("from_left")
                            data__treatments_item__fromleft = data__treatments_item["from_left"]
                            room____defs_length(data__treatments_item__fromleft)
                        if "from_front" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("from_front")
                            data__treatments_item__fromfront = data__treatments_item["from_front"]
                            room____defs_length(data__treatments_item__fromfront)
                        if "width" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("width")
                            data__treatments_item__width = data__treatments_item["width"]
                            room____defs_length(data__treatments_item__width)
                        if "height" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("height")
                            data__treatments_item__height = data__treatments_item["height"]
                            room____defs_length(data__treatments_item__height)
                        if "bottom" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("bottom")
                            data__treatments_item__bottom = data__treatments_item["bottom"]
                            room____defs_length(data__treatments_item__bottom)
                        if "thickness" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("thickness")
                            data__treatments_item__thickness = data__treatments_item["thickness"]
                            room____defs_length(data__treatments_item__thickness)
                        if "gap" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("gap")
                            data__treatments_item__gap = data__treatments_item["gap"]
                            room____defs_length(data__treatments_item__gap)
                        if "material" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("material")
                            data__treatments_item__material = data__treatments_item["material"]
                            if not isinstance(data__treatments_item__material, (str)):
                                raise NotValid
                            if not (isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'mineral-wool' or isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'glass-fibre' or isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'open-cell-foam' or isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'polyester' or isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'wood' or isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'fabric' or isinstance(data__treatments_item__material, str) and data__treatments_item__material == 'membrane'):
                                raise NotValid
                        if "absorption" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("absorption")
                            data__treatments_item__absorption = data__treatments_item["absorption"]
                            if not isinstance(data__treatments_item__absorption, (dict)):
                                raise NotValid
                            data__treatments_item__absorption_is_dict = isinstance(data__treatments_item__absorption, dict)
                            if data__treatments_item__absorption_is_dict:
                                data__treatments_item__absorption_keys = set(data__treatments_item__absorption.keys())
                                if "125 Hz" in data__treatments_item__absorption_keys:
                                    data__treatments_item__absorption_keys.remove("125 Hz")
                                    data__treatments_item__absorption__125Hz = data__treatments_item__absorption["125 Hz"]
                                    if not isinstance(data__treatments_item__absorption__125Hz, (int, float)) or isinstance(data__treatments_item__absorption__125Hz, bool):
                                        raise NotValid
                                    if isinstance(data__treatments_item__absorption__125Hz, (int, float)) and not isinstance(data__treatments_item__absorption__125Hz, bool):
                                        if data__treatments_item__absorption__125Hz < 0:
                                            raise NotValid
                                        if data__treatments_item__absorption__125Hz > 1.3:
                                            raise NotValid
                                if "250 Hz" in data__treatments_item__absorption_keys:
                                    data__treatments_item__absorption_keys.remove("250 Hz")
                                    data__treatments_item__absorption__250Hz = data__treatments_item__absorption["250 Hz"]
                                    if not isinstance(data__treatments_item__absorption__250Hz, (int, float)) or isinstance(data__treatments_item__absorption__250Hz, bool):
                                        raise NotValid
                                    if isinstance(data__treatments_item__absorption__250Hz, (int, float)) and not isinstance(data__treatments_item__absorption__250Hz, bool):
                                        if data__treatments_item__absorption__250Hz < 0:
                                            raise NotValid
                                        if data__treatments_item__absorption__250Hz > 1.3:
                                            raise NotValid
                                if "500 Hz" in data__treatments_item__absorption_keys:
                                    data__treatments_item__absorption_keys.remove("500 Hz")
                                    data__treatments_item__absorption__500Hz = data__treatments_item__absorption["500 Hz"]
                                    if not isinstance(data__treatments_item__absorption__500Hz, (int, float)) or isinstance(data__treatments_item__absorption__500Hz, bool):
                                        raise NotValid
                                    if isinstance(data__treatments_item__absorption__500Hz, (int, float)) and not isinstance(data__treatments_item__absorption__500Hz, bool):
                                        if data__treatments_item__absorption__500Hz < 0:
                                            raise NotValid
                                        if data__treatments_item__absorption__500Hz > 1.3:
                                            raise NotValid
                                if "1 kHz" in data__treatments_item__absorption_keys:
                                    data__treatments_item__absorption_keys.remove("1 kHz")
                                    data__treatments_item__absorption__1kHz = data__treatments_item__absorption["1 kHz"]
                                    if not isinstance(data__treatments_item__absorption__1kHz, (int, float)) or isinstance(data__treatments_item__absorption__1kHz, bool):
                                        raise NotValid
                                    if isinstance(data__treatments_item__absorption__1kHz, (int, float)) and not isinstance(data__treatments_item__absorption__1kHz, bool):
                                        if data__treatments_item__absorption__1kHz < 0:
                                            raise NotValid
                                        if data__treatments_item__absorption__1kHz > 1.3:
                                            raise NotValid
                                if "2 kHz" in data__treatments_item__absorption_keys:
                                    data__treatments_item__absorption_keys.remove("2 kHz")
                                    data__treatments_item__absorption__2kHz = data__treatments_item__absorption["2 kHz"]
                                    if not isinstance(data__treatments_item__absorption__2kHz, (int, float)) or isinstance(data__treatments_item__absorption__2kHz, bool):
                                        raise NotValid
                                    if isinstance(data__treatments_item__absorption__2kHz, (int, float)) and not isinstance(data__treatments_item__absorption__2kHz, bool):
                                        if data__treatments_item__absorption__2kHz < 0:
                                            raise NotValid
                                        if data__treatments_item__absorption__2kHz > 1.3:
                                            raise NotValid
                                if "4 kHz" in data__treatments_item__absorption_keys:
                                    data__treatments_item__absorption_keys.remove("4 kHz")
                                    data__treatments_item__absorption__4kHz = data__treatments_item__absorption["4 kHz"]
                                    if not isinstance(data__treatments_item__absorption__4kHz, (int, float)) or isinstance(data__treatments_item__absorption__4kHz, bool):
                                        raise NotValid
                                    if isinstance(data__treatments_item__absorption__4kHz, (int, float)) and not isinstance(data__treatments_item__absorption__4kHz, bool):
                                        if data__treatments_item__absorption__4kHz < 0:
                                            raise NotValid
                                        if data__treatments_item__absorption__4kHz > 1.3:
                                            raise NotValid
                                if data__treatments_item__absorption_keys:
                                    raise NotValid
                        if "mass" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("mass")
                            data__treatments_item__mass = data__treatments_item["mass"]
                            room____defs_mass(data__treatments_item__mass)
                        if "flame_spread" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("flame_spread")
                            data__treatments_item__flamespread = data__treatments_item["flame_spread"]
                            if not isinstance(data__treatments_item__flamespread, (int, float)) or isinstance(data__treatments_item__flamespread, bool):
                                raise NotValid
                            if isinstance(data__treatments_item__flamespread, (int, float)) and not isinstance(data__treatments_item__flamespread, bool):
                                if data__treatments_item__flamespread < 0:
                                    raise NotValid
                                if data__treatments_item__flamespread > 500:
                                    raise NotValid
                        if "smoke_developed" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("smoke_developed")
                            data__treatments_item__smokedeveloped = data__treatments_item["smoke_developed"]
                            if not isinstance(data__treatments_item__smokedeveloped, (int, float)) or isinstance(data__treatments_item__smokedeveloped, bool):
                                raise NotValid
                            if isinstance(data__treatments_item__smokedeveloped, (int, float)) and not isinstance(data__treatments_item__smokedeveloped, bool):
                                if data__treatments_item__smokedeveloped < 0:
                                    raise NotValid
                                if data__treatments_item__smokedeveloped > 1000:
                                    raise NotValid
                        if "thermal_barrier" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("thermal_barrier")
                            data__treatments_item__thermalbarrier = data__treatments_item["thermal_barrier"]
                            if not isinstance(data__treatments_item__thermalbarrier, (bool)):
                                raise NotValid
                        if "approval" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("approval")
                            data__treatments_item__approval = data__treatments_item["approval"]
                            if not isinstance(data__treatments_item__approval, (str)):
                                raise NotValid
                            if isinstance(data__treatments_item__approval, str):
                                data__treatments_item__approval_len = len(data__treatments_item__approval)
                                if data__treatments_item__approval_len < 1:
                                    raise NotValid
                                if data__treatments_item__approval_len > 400:
                                    raise NotValid
                        if "fixing" in data__treatments_item_keys:
                            data__treatments_item_keys.remove("fixing")
                            data__treatments_item__fixing = data__treatments_item["fixing"]
                            room____defs_fixing(data__treatments_item__fixing)
                        if data__treatments_item_keys:
                            raise NotValid
        if "seats" in data_keys:
            data_keys.remove("seats")
            data__seats = data["seats"]
            if not isinstance(data__seats, (list, tuple)):
                raise NotValid
            data__seats_is_list = isinstance(data__seats, (list, tuple))
            if data__seats_is_list:
                data__seats_len = len(data__seats)
                if data__seats_len > 60:
                    raise NotValid
                for data__seats_x, data__seats_item in enumerate(data__seats):
                    if not isinstance(data__seats_item, (dict)):
                        raise NotValid
                    data__seats_item_is_dict = isinstance(data__seats_item, dict)
                    if data__seats_item_is_dict:
                        data__seats_item__missing_keys = set(['id']) - data__seats_item.keys()
                        if data__seats_item__missing_keys:
                            raise NotValid
                        data__seats_item_keys = set(data__seats_item.keys())
                        if "id" in data__seats_item_keys:
                            data__seats_item_keys.remove("id")
                            data__seats_item__id = data__seats_item["id"]
                            room____defs_id(data__seats_item__id)
                        if "ear" in data__seats_item_keys:
                            data__seats_item_keys.remove("ear")
                            data__seats_item__ear = data__seats_item["ear"]
                            room____defs_position(data__seats_item__ear)
                        if "facing" in data__seats_item_keys:
                            data__seats_item_keys.remove("facing")
                            data__seats_item__facing = data__seats_item["facing"]
                            room____defs_angle(data__seats_item__facing)
                        if "row" in data__seats_item_keys:
                            data__seats_item_keys.remove("row")
                            data__seats_item__row = data__seats_item["row"]
                            if not isinstance(data__seats_item__row, (int)) and not (isinstance(data__seats_item__row, float) and data__seats_item__row.is_integer()) or isinstance(data__seats_item__row, bool):
                                raise NotValid
                            if isinstance(data__seats_item__row, (int, float)) and not isinstance(data__seats_item__row, bool):
                                if data__seats_item__row < 1:
                                    raise NotValid
                                if data__seats_item__row > 12:
                                    raise NotValid
                        if "reference" in data__seats_item_keys:
                            data__seats_item_keys.remove("reference")
                            data__seats_item__reference = data__seats_item["reference"]
                            if not isinstance(data__seats_item__reference, (bool)):
                                raise NotValid
                        if "eye_height" in data__seats_item_keys:
                            data__seats_item_keys.remove("eye_height")
                            data__seats_item__eyeheight = data__seats_item["eye_height"]
                            room____defs_length(data__seats_item__eyeheight)
                        if "head_top" in data__seats_item_keys:
                            data__seats_item_keys.remove("head_top")
                            data__seats_item__headtop = data__seats_item["head_top"]
                            room____defs_length(data__seats_item__headtop)
                        if "back_top" in data__seats_item_keys:
                            data__seats_item_keys.remove("back_top")
                            data__seats_item__backtop = data__seats_item["back_top"]
                            room____defs_length(data__seats_item__backtop)
                        if "width" in data__seats_item_keys:
                            data__seats_item_keys.remove("width")
                            data__seats_item__width = data__seats_item["width"]
                            room____defs_length(data__seats_item__width)
                        if "depth" in data__seats_item_keys:
                            data__seats_item_keys.remove("depth")
                            data__seats_item__depth = data__seats_item["depth"]
                            room____defs_length(data__seats_item__depth)
                        if "open_length" in data__seats_item_keys:
                            data__seats_item_keys.remove("open_length")
                            data__seats_item__openlength = data__seats_item["open_length"]
                            room____defs_length(data__seats_item__openlength)
                        if "recline" in data__seats_item_keys:
                            data__seats_item_keys.remove("recline")
                            data__seats_item__recline = data__seats_item["recline"]
                            room____defs_angle(data__seats_item__recline)
                        if "riser" in data__seats_item_keys:
                            data__seats_item_keys.remove("riser")
                            data__seats_item__riser = data__seats_item["riser"]
                            room____defs_length(data__seats_item__riser)
                        if data__seats_item_keys:
                            raise NotValid
        if "picture" in data_keys:
            data_keys.remove("picture")
            data__picture = data["picture"]
            if not isinstance(data__picture, (dict)):
                raise NotValid
            data__picture_is_dict = isinstance(data__picture, dict)
            if data__picture_is_dict:
                data__picture_keys = set(data__picture.keys())
                if "kind" in data__picture_keys:
                    data__picture_keys.remove("kind")
                    data__picture__kind = data__picture["kind"]
                    if not isinstance(data__picture__kind, (str)):
                        raise NotValid
                    if not (isinstance(data__picture__kind, str) and data__picture__kind == 'display' or isinstance(data__picture__kind, str) and data__picture__kind == 'projection'):
                        raise NotValid
                if "product" in data__picture_keys:
                    data__picture_keys.remove("product")
                    data__picture__product = data__picture["product"]
                    if not isinstance(data__picture__product, (str)):
                        raise NotValid
                    if isinstance(data__picture__product, str):
                        data__picture__product_len = len(data__picture__product)
                        if data__picture__product_len < 1:
                            raise NotValid
                        if data__picture__product_len > 63:
                            raise NotValid
                if "centre" in data__picture_keys:
                    data__picture_keys.remove("centre")
                    data__picture__centre = data__picture["centre"]
                    room____defs_position(data__picture__centre)
                if "width" in data__picture_keys:
                    data__picture_keys.remove("width")
                    data__picture__width = data__picture["width"]
                    room____defs_length(data__picture__width)
                if "height" in data__picture_keys:
                    data__picture_keys.remove("height")
                    data__picture__height = data__picture["height"]
                    room____defs_length(data__picture__height)
                if "lines" in data__picture_keys:
                    data__picture_keys.remove("lines")
                    data__picture__lines = data__picture["lines"]
                    if not isinstance(data__picture__lines, (int)) and not (isinstance(data__picture__lines, float) and data__picture__lines.is_integer()) or isinstance(data__picture__lines, bool):
                        raise NotValid
                    if isinstance(data__picture__lines, (int, float)) and not isinstance(data__picture__lines, bool):
                        if data__picture__lines < 240:
                            raise NotValid
                        if data__picture__lines > 9000:
                            raise NotValid
                if "formats" in data__picture_keys:
                    data__picture_keys.remove("formats")
                    data__picture__formats = data__picture["formats"]
                    if not isinstance(data__picture__formats, (list, tuple)):
                        raise NotValid
                    data__picture__formats_is_list = isinstance(data__picture__formats, (list, tuple))
                    if data__picture__formats_is_list:
                        data__picture__formats_len = len(data__picture__formats)
                        if data__picture__formats_len > 8:
                            raise NotValid
                        for data__picture__formats_x, data__picture__formats_item in enumerate(data__picture__formats):
                            if not isinstance(data__picture__formats_item, (int, float)) or isinstance(data__picture__formats_item, bool):
                                raise NotValid
                            if isinstance(data__picture__formats_item, (int, float)) and not isinstance(data__picture__formats_item, bool):
                                if data__picture__formats_item < 1:
                                    raise NotValid
                                if data__picture__formats_item > 4:
                                    raise NotValid
                if "transparent" in data__picture_keys:
                    data__picture_keys.remove("transparent")
                    data__picture__transparent = data__picture["transparent"]
                    if not isinstance(data__picture__transparent, (bool)):
                        raise NotValid
                if "ambient" in data__picture_keys:
                    data__picture_keys.remove("ambient")
                    data__picture__ambient = data__picture["ambient"]
                    room____defs_illuminance(data__picture__ambient)
                if "mounting" in data__picture_keys:
                    data__picture_keys.remove("mounting")
                    data__picture__mounting = data__picture["mounting"]
                    room____defs_mounting(data__picture__mounting)
                if "projector" in data__picture_keys:
                    data__picture_keys.remove("projector")
                    data__picture__projector = data__picture["projector"]
                    if not isinstance(data__picture__projector, (dict)):
                        raise NotValid
                    data__picture__projector_is_dict = isinstance(data__picture__projector, dict)
                    if data__picture__projector_is_dict:
                        data__picture__projector_keys = set(data__picture__projector.keys())
                        if "id" in data__picture__projector_keys:
                            data__picture__projector_keys.remove("id")
                            data__picture__projector__id = data__picture__projector["id"]
                            room____defs_id(data__picture__projector__id)
                        if "product" in data__picture__projector_keys:
                            data__picture__projector_keys.remove("product")
                            data__picture__projector__product = data__picture__projector["product"]
                            if not isinstance(data__picture__projector__product, (str)):
                                raise NotValid
                            if isinstance(data__picture__projector__product, str):
                                data__picture__projector__product_len = len(data__picture__projector__product)
                                if data__picture__projector__product_len < 1:
                                    raise NotValid
                                if data__picture__projector__product_len > 63:
                                    raise NotValid
                        if "lens" in data__picture__projector_keys:
                            data__picture__projector_keys.remove("lens")
                            data__picture__projector__lens = data__picture__projector["lens"]
                            room____defs_position(data__picture__projector__lens)
                        if "mounting" in data__picture__projector_keys:
                            data__picture__projector_keys.remove("mounting")
                            data__picture__projector__mounting = data__picture__projector["mounting"]
                            room____defs_mounting(data__picture__projector__mounting)
                        if data__picture__projector_keys:
                            raise NotValid
                if data__picture_keys:
                    raise NotValid
        if "layout" in data_keys:
            data_keys.remove("layout")
            data__layout = data["layout"]
            room____defs_layout(data__layout)
        if "loudspeakers" in data_keys:
            data_keys.remove("loudspeakers")
            data__loudspeakers = data["loudspeakers"]
            if not isinstance(data__loudspeakers, (list, tuple)):
                raise NotValid
            data__loudspeakers_is_list = isinstance(data__loudspeakers, (list, tuple))
            if data__loudspeakers_is_list:
                data__loudspeakers_len = len(data__loudspeakers)
                if data__loudspeakers_len > 60:
                    raise NotValid
                for data__loudspeakers_x, data__loudspeakers_item in enumerate(data__loudspeakers):
                    if not isinstance(data__loudspeakers_item, (dict)):
                        raise NotValid
                    data__loudspeakers_item_is_dict = isinstance(data__loudspeakers_item, dict)
                    if data__loudspeakers_item_is_dict:
                        data__loudspeakers_item__missing_keys = set(['id']) - data__loudspeakers_item.keys()
                        if data__loudspeakers_item__missing_keys:
                            raise NotValid
                        data__loudspeakers_item_keys = set(data__loudspeakers_item.keys())
                        if "id" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("id")
                            data__loudspeakers_item__id = data__loudspeakers_item["id"]
                            room____defs_id(data__loudspeakers_item__id)
                        if "label" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("label")
                            data__loudspeakers_item__label = data__loudspeakers_item["label"]
                            room____defs_label(data__loudspeakers_item__label)
                        if "product" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("product")
                            data__loudspeakers_item__product = data__loudspeakers_item["product"]
                            if not isinstance(data__loudspeakers_item__product, (str)):
                                raise NotValid
                            if isinstance(data__loudspeakers_item__product, str):
                                data__loudspeakers_item__product_len = len(data__loudspeakers_item__product)
                                if data__loudspeakers_item__product_len < 1:
                                    raise NotValid
                                if data__loudspeakers_item__product_len > 63:
                                    raise NotValid
                        if "position" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("position")
                            data__loudspeakers_item__position = data__loudspeakers_item["position"]
                            room____defs_position(data__loudspeakers_item__position)
                        if "aim" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("aim")
                            data__loudspeakers_item__aim = data__loudspeakers_item["aim"]
                            room____defs_aim(data__loudspeakers_item__aim)
                        if "mounting" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("mounting")
                            data__loudspeakers_item__mounting = data__loudspeakers_item["mounting"]
                            room____defs_mounting(data__loudspeakers_item__mounting)
                        if "departure" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("departure")
                            data__loudspeakers_item__departure = data__loudspeakers_item["departure"]
                            room____defs_departure(data__loudspeakers_item__departure)
                        if "behind_screen" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("behind_screen")
                            data__loudspeakers_item__behindscreen = data__loudspeakers_item["behind_screen"]
                            if not isinstance(data__loudspeakers_item__behindscreen, (bool)):
                                raise NotValid
                        if "port_clearance" in data__loudspeakers_item_keys:
                            data__loudspeakers_item_keys.remove("port_clearance")
                            data__loudspeakers_item__portclearance = data__loudspeakers_item["port_clearance"]
                            room____defs_length(data__loudspeakers_item__portclearance)
                        if data__loudspeakers_item_keys:
                            raise NotValid
        if "subwoofers" in data_keys:
            data_keys.remove("subwoofers")
            data__subwoofers = data["subwoofers"]
            if not isinstance(data__subwoofers, (list, tuple)):
                raise NotValid
            data__subwoofers_is_list = isinstance(data__subwoofers, (list, tuple))
            if data__subwoofers_is_list:
                data__subwoofers_len = len(data__subwoofers)
                if data__subwoofers_len > 24:
                    raise NotValid
                for data__subwoofers_x, data__subwoofers_item in enumerate(data__subwoofers):
                    if not isinstance(data__subwoofers_item, (dict)):
                        raise NotValid
                    data__subwoofers_item_is_dict = isinstance(data__subwoofers_item, dict)
                    if data__subwoofers_item_is_dict:
                        data__subwoofers_item__missing_keys = set(['id']) - data__subwoofers_item.keys()
                        if data__subwoofers_item__missing_keys:
                            raise NotValid
                        data__subwoofers_item_keys = set(data__subwoofers_item.keys())
                        if "id" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("id")
                            data__subwoofers_item__id = data__subwoofers_item["id"]
                            room____defs_id(data__subwoofers_item__id)
                        if "label" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("label")
                            data__subwoofers_item__label = data__subwoofers_item["label"]
                            room____defs_label(data__subwoofers_item__label)
                        if "product" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("product")
                            data__subwoofers_item__product = data__subwoofers_item["product"]
                            if not isinstance(data__subwoofers_item__product, (str)):
                                raise NotValid
                            if isinstance(data__subwoofers_item__product, str):
                                data__subwoofers_item__product_len = len(data__subwoofers_item__product)
                                if data__subwoofers_item__product_len < 1:
                                    raise NotValid
                                if data__subwoofers_item__product_len > 63:
                                    raise NotValid
                        if "position" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("position")
                            data__subwoofers_item__position = data__subwoofers_item["position"]
                            room____defs_position(data__subwoofers_item__position)
                        if "facing" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("facing")
                            data__subwoofers_item__facing = data__subwoofers_item["facing"]
                            room____defs_angle(data__subwoofers_item__facing)
                        if "mounting" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("mounting")
                            data__subwoofers_item__mounting = data__subwoofers_item["mounting"]
                            room____defs_mounting(data__subwoofers_item__mounting)
                        if "level" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("level")
                            data__subwoofers_item__level = data__subwoofers_item["level"]
                            room____defs_level(data__subwoofers_item__level)
                        if "delay" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("delay")
                            data__subwoofers_item__delay = data__subwoofers_item["delay"]
                            room____defs_time(data__subwoofers_item__delay)
                        if "inverted" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("inverted")
                            data__subwoofers_item__inverted = data__subwoofers_item["inverted"]
                            if not isinstance(data__subwoofers_item__inverted, (bool)):
                                raise NotValid
                        if "low_pass" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("low_pass")
                            data__subwoofers_item__lowpass = data__subwoofers_item["low_pass"]
                            room____defs_frequency(data__subwoofers_item__lowpass)
                        if "port_clearance" in data__subwoofers_item_keys:
                            data__subwoofers_item_keys.remove("port_clearance")
                            data__subwoofers_item__portclearance = data__subwoofers_item["port_clearance"]
                            room____defs_length(data__subwoofers_item__portclearance)
                        if data__subwoofers_item_keys:
                            raise NotValid
        if "electronics" in data_keys:
            data_keys.remove("electronics")
            data__electronics = data["electronics"]
            if not isinstance(data__electronics, (dict)):
                raise NotValid
            data__electronics_is_dict = isinstance(data__electronics, dict)
            if data__electronics_is_dict:
                data__electronics_keys = set(data__electronics.keys())
                if "processor" in data__electronics_keys:
                    data__electronics_keys.remove("processor")
                    data__electronics__processor = data__electronics["processor"]
                    if not isinstance(data__electronics__processor, (dict)):
                        raise NotValid
                    data__electronics__processor_is_dict = isinstance(data__electronics__processor, dict)
                    if data__electronics__processor_is_dict:
                        data__electronics__processor_keys = set(data__electronics__processor.keys())
                        if "id" in data__electronics__processor_keys:
                            data__electronics__processor_keys.remove("id")
                            data__electronics__processor__id = data__electronics__processor["id"]
                            room____defs_id(data__electronics__processor__id)
                        if "product" in data__electronics__processor_keys:
                            data__electronics__processor_keys.remove("product")
                            data__electronics__processor__product = data__electronics__processor["product"]
                            if not isinstance(data__electronics__processor__product, (str)):
                                raise NotValid
                            if isinstance(data__electronics__processor__product, str):
                                data__electronics__processor__product_len = len(data__electronics__processor__product)
                                if data__electronics__processor__product_len < 1:
                                    raise NotValid
                                if data__electronics__processor__product_len > 63:
                                    raise NotValid
                        if "unfitted" in data__electronics__processor_keys:
                            data__electronics__processor_keys.remove("unfitted")
                            data__electronics__processor__unfitted = data__electronics__processor["unfitted"]
                            if not isinstance(data__electronics__processor__unfitted, (list, tuple)):
                                raise NotValid
                            data__electronics__processor__unfitted_is_list = isinstance(data__electronics__processor__unfitted, (list, tuple))
                            if data__electronics__processor__unfitted_is_list:
                                data__electronics__processor__unfitted_len = len(data__electronics__processor__unfitted)
                                if data__electronics__processor__unfitted_len > 24:
                                    raise NotValid
                                for data__electronics__processor__unfitted_x, data__electronics__processor__unfitted_item in enumerate(data__electronics__processor__unfitted):
                                    room____defs_label(data__electronics__processor__unfitted_item)
                        if data__electronics__processor_keys:
                            raise NotValid
                if "amplifiers" in data__electronics_keys:
                    data__electronics_keys.remove("amplifiers")
                    data__electronics__amplifiers = data__electronics["amplifiers"]
                    if not isinstance(data__electronics__amplifiers, (list, tuple)):
                        raise NotValid
                    data__electronics__amplifiers_is_list = isinstance(data__electronics__amplifiers, (list, tuple))
                    if data__electronics__amplifiers_is_list:
                        data__electronics__amplifiers_len = len(data__electronics__amplifiers)
                        if data__electronics__amplifiers_len > 24:
                            raise NotValid
                        for data__electronics__amplifiers_x, data__electronics__amplifiers_item in enumerate(data__electronics__amplifiers):
                            if not isinstance(data__electronics__amplifiers_item, (dict)):
                                raise NotValid
                            data__electronics__amplifiers_item_is_dict = isinstance(data__electronics__amplifiers_item, dict)
                            if data__electronics__amplifiers_item_is_dict:
                                data__electronics__amplifiers_item__missing_keys = set(['id']) - data__electronics__amplifiers_item.keys()
                                if data__electronics__amplifiers_item__missing_keys:
                                    raise NotValid
                                data__electronics__amplifiers_item_keys = set(data__electronics__amplifiers_item.keys())
                                if "id" in data__electronics__amplifiers_item_keys:
                                    data__electronics__amplifiers_item_keys.remove("id")
                                    data__electronics__amplifiers_item__id = data__electronics__amplifiers_item["id"]
                                    room____defs_id(data__electronics__amplifiers_item__id)
                                if "product" in data__electronics__amplifiers_item_keys:
                                    data__electronics__amplifiers_item_keys.remove("product")
                                    data__electronics__amplifiers_item__product = data__electronics__amplifiers_item["product"]
                                    if not isinstance(data__electronics__amplifiers_item__product, (str)):
                                        raise NotValid
                                    if isinstance(data__electronics__amplifiers_item__product, str):
                                        data__electronics__amplifiers_item__product_len = len(data__electronics__amplifiers_item__product)
                                        if data__electronics__amplifiers_item__product_len < 1:
                                            raise NotValid
                                        if data__electronics__amplifiers_item__product_len > 63:
                                            raise NotValid
                                if "rack" in data__electronics__amplifiers_item_keys:
                                    data__electronics__amplifiers_item_keys.remove("rack")
                                    data__electronics__amplifiers_item__rack = data__electronics__amplifiers_item["rack"]
                                    if not isinstance(data__electronics__amplifiers_item__rack, (str)):
                                        raise NotValid
                                    if isinstance(data__electronics__amplifiers_item__rack, str):
                                        data__electronics__amplifiers_item__rack_len = len(data__electronics__amplifiers_item__rack)
                                        if data__electronics__amplifiers_item__rack_len < 1:
                                            raise NotValid
                                        if data__electronics__amplifiers_item__rack_len > 63:
                                            raise NotValid
                                if "feeds" in data__electronics__amplifiers_item_keys:
                                    data__electronics__amplifiers_item_keys.remove("feeds")
                                    data__electronics__amplifiers_item__feeds = data__electronics__amplifiers_item["feeds"]
                                    if not isinstance(data__electronics__amplifiers_item__feeds, (list, tuple)):
                                        raise NotValid
                                    data__electronics__amplifiers_item__feeds_is_list = isinstance(data__electronics__amplifiers_item__feeds, (list, tuple))
                                    if data__electronics__amplifiers_item__feeds_is_list:
                                        data__electronics__amplifiers_item__feeds_len = len(data__electronics__amplifiers_item__feeds)
                                        if data__electronics__amplifiers_item__feeds_len > 64:
                                            raise NotValid
                                        for data__electronics__amplifiers_item__feeds_x, data__electronics__amplifiers_item__feeds_item in enumerate(data__electronics__amplifiers_item__feeds):
                                            if not isinstance(data__electronics__amplifiers_item__feeds_item, (dict)):
                                                raise NotValid
                                            data__electronics__amplifiers_item__feeds_item_is_dict = isinstance(data__electronics__amplifiers_item__feeds_item, dict)
                                            if data__electronics__amplifiers_item__feeds_item_is_dict:
                                                data__electronics__amplifiers_item__feeds_item__missing_keys = set(['output', 'loudspeakers']) - data__electronics__amplifiers_item__feeds_item.keys()
                                                if data__electronics__amplifiers_item__feeds_item__missing_keys:
                                                    raise NotValid
                                                data__electronics__amplifiers_item__feeds_item_keys = set(data__electronics__amplifiers_item__feeds_item.keys())
                                                if "output" in data__electronics__amplifiers_item__feeds_item_keys:
                                                    data__electronics__amplifiers_item__feeds_item_keys.remove("output")
                                                    data__electronics__amplifiers_item__feeds_item__output = data__electronics__amplifiers_item__feeds_item["output"]
                                                    if not isinstance(data__electronics__amplifiers_item__feeds_item__output, (int)) and not (isinstance(data__electronics__amplifiers_item__feeds_item__output, float) and data__electronics__amplifiers_item__feeds_item__output.is_integer()) or isinstance(data__electronics__amplifiers_item__feeds_item__output, bool):
                                                        raise NotValid
                                                    if isinstance(data__electronics__amplifiers_item__feeds_item__output, (int, float)) and not isinstance(data__electronics__amplifiers_item__feeds_item__output, bool):
                                                        if data__electronics__amplifiers_item__feeds_item__output < 1:
                                                            raise NotValid
                                                        if data__electronics__amplifiers_item__feeds_item__output > 64:
                                                            raise NotValid
                                                if "loudspeakers" in data__electronics__amplifiers_item__feeds_item_keys:
                                                    data__electronics__amplifiers_item__feeds_item_keys.remove("loudspeakers")
                                                    data__electronics__amplifiers_item__feeds_item__loudspeakers = data__electronics__amplifiers_item__feeds_item["loudspeakers"]
                                                    if not isinstance(data__electronics__amplifiers_item__feeds_item__loudspeakers, (list, tuple)):
                                                        raise NotValid
                                                    data__electronics__amplifiers_item__feeds_item__loudspeakers_is_list = isinstance(data__electronics__amplifiers_item__feeds_item__loudspeakers, (list, tuple))
                                                    if data__electronics__amplifiers_item__feeds_item__loudspeakers_is_list:
                                                        data__electronics__amplifiers_item__feeds_item__loudspeakers_len = len(data__electronics__amplifiers_item__feeds_item__loudspeakers)
                                                        if data__electronics__amplifiers_item__feeds_item__loudspeakers_len > 8:
                                                            raise NotValid
                                                        for data__electronics__amplifiers_item__feeds_item__loudspeakers_x, data__electronics__amplifiers_item__feeds_item__loudspeakers_item in enumerate(data__electronics__amplifiers_item__feeds_item__loudspeakers):
                                                            if not isinstance(data__electronics__amplifiers_item__feeds_item__loudspeakers_item, (str)):
                                                                raise NotValid
                                                            if isinstance(data__electronics__amplifiers_item__feeds_item__loudspeakers_item, str):
                                                                data__electronics__amplifiers_item__feeds_item__loudspeakers_item_len = len(data__electronics__amplifiers_item__feeds_item__loudspeakers_item)
                                                                if data__electronics__amplifiers_item__feeds_item__loudspeakers_item_len < 1:
                                                                    raise NotValid
                                                                if data__electronics__amplifiers_item__feeds_item__loudspeakers_item_len > 63:
                                                                    raise NotValid
                                                if "wiring" in data__electronics__amplifiers_item__feeds_item_keys:
                                                    data__electronics__amplifiers_item__feeds_item_keys.remove("wiring")
                                                    data__electronics__amplifiers_item__feeds_item__wiring = data__electronics__amplifiers_item__feeds_item["wiring"]
                                                    if not isinstance(data__electronics__amplifiers_item__feeds_item__wiring, (str)):
                                                        raise NotValid
                                                    if not (isinstance(data__electronics__amplifiers_item__feeds_item__wiring, str) and data__electronics__amplifiers_item__feeds_item__wiring == 'parallel' or isinstance(data__electronics__amplifiers_item__feeds_item__wiring, str) and data__electronics__amplifiers_item__feeds_item__wiring == 'series'):
                                                        raise NotValid
                                                if data__electronics__amplifiers_item__feeds_item_keys:
                                                    raise NotValid
                                if data__electronics__amplifiers_item_keys:
                                    raise NotValid
                if "racks" in data__electronics_keys:
                    data__electronics_keys.remove("racks")
                    data__electronics__racks = data__electronics["racks"]
                    if not isinstance(data__electronics__racks, (list, tuple)):
                        raise NotValid
                    data__electronics__racks_is_list = isinstance(data__electronics__racks, (list, tuple))
                    if data__electronics__racks_is_list:
                        data__electronics__racks_len = len(data__electronics__racks)
                        if data__electronics__racks_len > 12:
                            raise NotValid
                        for data__electronics__racks_x, data__electronics__racks_item in enumerate(data__electronics__racks):
                            if not isinstance(data__electronics__racks_item, (dict)):
                                raise NotValid
                            data__electronics__racks_item_is_dict = isinstance(data__electronics__racks_item, dict)
                            if data__electronics__racks_item_is_dict:
                                data__electronics__racks_item__missing_keys = set(['id']) - data__electronics__racks_item.keys()
                                if data__electronics__racks_item__missing_keys:
                                    raise NotValid
                                data__electronics__racks_item_keys = set(data__electronics__racks_item.keys())
                                if "id" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("id")
                                    data__electronics__racks_item__id = data__electronics__racks_item["id"]
                                    room____defs_id(data__electronics__racks_item__id)
                                if "position" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("position")
                                    data__electronics__racks_item__position = data__electronics__racks_item["position"]
                                    room____defs_position(data__electronics__racks_item__position)
                                if "enclosed" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("enclosed")
                                    data__electronics__racks_item__enclosed = data__electronics__racks_item["enclosed"]
                                    if not isinstance(data__electronics__racks_item__enclosed, (bool)):
                                        raise NotValid
                                if "airflow" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("airflow")
                                    data__electronics__racks_item__airflow = data__electronics__racks_item["airflow"]
                                    room____defs_airflow(data__electronics__racks_item__airflow)
                                if "inlet" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("inlet")
                                    data__electronics__racks_item__inlet = data__electronics__racks_item["inlet"]
                                    room____defs_temperature(data__electronics__racks_item__inlet)
                                if "contains" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("contains")
                                    data__electronics__racks_item__contains = data__electronics__racks_item["contains"]
                                    if not isinstance(data__electronics__racks_item__contains, (list, tuple)):
                                        raise NotValid
                                    data__electronics__racks_item__contains_is_list = isinstance(data__electronics__racks_item__contains, (list, tuple))
                                    if data__electronics__racks_item__contains_is_list:
                                        data__electronics__racks_item__contains_len = len(data__electronics__racks_item__contains)
                                        if data__electronics__racks_item__contains_len > 64:
                                            raise NotValid
                                        for data__electronics__racks_item__contains_x, data__electronics__racks_item__contains_item in enumerate(data__electronics__racks_item__contains):
                                            if not isinstance(data__electronics__racks_item__contains_item, (str)):
                                                raise NotValid
                                            if isinstance(data__electronics__racks_item__contains_item, str):
                                                data__electronics__racks_item__contains_item_len = len(data__electronics__racks_item__contains_item)
                                                if data__electronics__racks_item__contains_item_len < 1:
                                                    raise NotValid
                                                if data__electronics__racks_item__contains_item_len > 63:
                                                    raise NotValid
                                if "front_clear" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("front_clear")
                                    data__electronics__racks_item__frontclear = data__electronics__racks_item["front_clear"]
                                    room____defs_length(data__electronics__racks_item__frontclear)
                                if "bonded" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("bonded")
                                    data__electronics__racks_item__bonded = data__electronics__racks_item["bonded"]
                                    if not isinstance(data__electronics__racks_item__bonded, (bool)):
                                        raise NotValid
                                if "mounting" in data__electronics__racks_item_keys:
                                    data__electronics__racks_item_keys.remove("mounting")
                                    data__electronics__racks_item__mounting = data__electronics__racks_item["mounting"]
                                    room____defs_mounting(data__electronics__racks_item__mounting)
                                if data__electronics__racks_item_keys:
                                    raise NotValid
                if data__electronics_keys:
                    raise NotValid
        if "raceways" in data_keys:
            data_keys.remove("raceways")
            data__raceways = data["raceways"]
            if not isinstance(data__raceways, (list, tuple)):
                raise NotValid
            data__raceways_is_list = isinstance(data__raceways, (list, tuple))
            if data__raceways_is_list:
                data__raceways_len = len(data__raceways)
                if data__raceways_len > 200:
                    raise NotValid
                for data__raceways_x, data__raceways_item in enumerate(data__raceways):
                    if not isinstance(data__raceways_item, (dict)):
                        raise NotValid
                    data__raceways_item_is_dict = isinstance(data__raceways_item, dict)
                    if data__raceways_item_is_dict:
                        data__raceways_item__missing_keys = set(['id']) - data__raceways_item.keys()
                        if data__raceways_item__missing_keys:
                            raise NotValid
                        data__raceways_item_keys = set(data__raceways_item.keys())
                        if "id" in data__raceways_item_keys:
                            data__raceways_item_keys.remove("id")
                            data__raceways_item__id = data__raceways_item["id"]
                            room____defs_id(data__raceways_item__id)
                        if "kind" in data__raceways_item_keys:
                            data__raceways_item_keys.remove("kind")
                            data__raceways_item__kind = data__raceways_item["kind"]
                            if not isinstance(data__raceways_item__kind, (str)):
                                raise NotValid
                            if not (isinstance(data__raceways_item__kind, str) and data__raceways_item__kind == 'emt' or isinstance(data__raceways_item__kind, str) and data__raceways_item__kind == 'ent' or isinstance(data__raceways_item__kind, str) and data__raceways_item__kind == 'pvc' or isinstance(data__raceways_item__kind, str) and data__raceways_item__kind == 'trunking' or isinstance(data__raceways_item__kind, str) and data__raceways_item__kind == 'sleeve'):
                                raise NotValid
                        if "size" in data__raceways_item_keys:
                            data__raceways_item_keys.remove("size")
                            data__raceways_item__size = data__raceways_item["size"]
                            if not isinstance(data__raceways_item__size, (str)):
                                raise NotValid
                            if not (isinstance(data__raceways_item__size, str) and data__raceways_item__size == '1/2' or isinstance(data__raceways_item__size, str) and data__raceways_item__size == '3/4' or isinstance(data__raceways_item__size, str) and data__raceways_item__size == '1' or isinstance(data__raceways_item__size, str) and data__raceways_item__size == '1-1/4' or isinstance(data__raceways_item__size, str) and data__raceways_item__size == '1-1/2' or isinstance(data__raceways_item__size, str) and data__raceways_item__size == '2'):
                                raise NotValid
                        if "inner_diameter" in data__raceways_item_keys:
                            data__raceways_item_keys.remove("inner_diameter")
                            data__raceways_item__innerdiameter = data__raceways_item["inner_diameter"]
                            room____defs_length(data__raceways_item__innerdiameter)
                        if "length" in data__raceways_item_keys:
                            data__raceways_item_keys.remove("length")
                            data__raceways_item__length = data__raceways_item["length"]
                            room____defs_length(data__raceways_item__length)
                        if data__raceways_item_keys:
                            raise NotValid
        if "cables" in data_keys:
            data_keys.remove("cables")
            data__cables = data["cables"]
            if not isinstance(data__cables, (list, tuple)):
                raise NotValid
            data__cables_is_list = isinstance(data__cables, (list, tuple))
            if data__cables_is_list:
                data__cables_len = len(data__cables)
                if data__cables_len > 200:
                    raise NotValid
                for data__cables_x, data__cables_item in enumerate(data__cables):
                    if not isinstance(data__cables_item, (dict)):
                        raise NotValid
                    data__cables_item_is_dict = isinstance(data__cables_item, dict)
                    if data__cables_item_is_dict:
                        data__cables_item__missing_keys = set(['id']) - data__cables_item.keys()
                        if data__cables_item__missing_keys:
                            raise NotValid
                        data__cables_item_keys = set(data__cables_item.keys())
                        if "id" in data__cables_item_keys:
                            data__cables_item_keys.remove("id")
                            data__cables_item__id = data__cables_item["id"]
                            room____defs_id(data__cables_item__id)
                        if "carries" in data__cables_item_keys:
                            data__cables_item_keys.remove("carries")
                            data__cables_item__carries = data__cables_item["carries"]
                            if not isinstance(data__cables_item__carries, (str)):
                                raise NotValid
                            if not (isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'loudspeaker' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'video' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'network' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'usb' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'control' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'line-level' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'mains' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'trigger' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'antenna' or isinstance(data__cables_item__carries, str) and data__cables_item__carries == 'lighting'):
                                raise NotValid
                        if "from" in data__cables_item_keys:
                            data__cables_item_keys.remove("from")
                            data__cables_item__from = data__cables_item["from"]
                            if not isinstance(data__cables_item__from, (str)):
                                raise NotValid
                            if isinstance(data__cables_item__from, str):
                                data__cables_item__from_len = len(data__cables_item__from)
                                if data__cables_item__from_len < 1:
                                    raise NotValid
                                if data__cables_item__from_len > 63:
                                    raise NotValid
                        if "to" in data__cables_item_keys:
                            data__cables_item_keys.remove("to")
                            data__cables_item__to = data__cables_item["to"]
                            if not isinstance(data__cables_item__to, (str)):
                                raise NotValid
                            if isinstance(data__cables_item__to, str):
                                data__cables_item__to_len = len(data__cables_item__to)
                                if data__cables_item__to_len < 1:
                                    raise NotValid
                                if data__cables_item__to_len > 63:
                                    raise NotValid
                        if "length" in data__cables_item_keys:
                            data__cables_item_keys.remove("length")
                            data__cables_item__length = data__cables_item["length"]
                            room____defs_length(data__cables_item__length)
                        if "conductor" in data__cables_item_keys:
                            data__cables_item_keys.remove("conductor")
                            data__cables_item__conductor = data__cables_item["conductor"]
                            room____defs_conductor(data__cables_item__conductor)
                        if "conductors" in data__cables_item_keys:
                            data__cables_item_keys.remove("conductors")
                            data__cables_item__conductors = data__cables_item["conductors"]
                            if not isinstance(data__cables_item__conductors, (int)) and not (isinstance(data__cables_item__conductors, float) and data__cables_item__conductors.is_integer()) or isinstance(data__cables_item__conductors, bool):
                                raise NotValid
                            if isinstance(data__cables_item__conductors, (int, float)) and not isinstance(data__cables_item__conductors, bool):
                                if data__cables_item__conductors < 1:
                                    raise NotValid
                                if data__cables_item__conductors > 48:
                                    raise NotValid
                        if "outer_diameter" in data__cables_item_keys:
                            data__cables_item_keys.remove("outer_diameter")
                            data__cables_item__outerdiameter = data__cables_item["outer_diameter"]
                            room____defs_length(data__cables_item__outerdiameter)
                        if "marking" in data__cables_item_keys:
                            data__cables_item_keys.remove("marking")
                            data__cables_item__marking = data__cables_item["marking"]
                            if not isinstance(data__cables_item__marking, (str)):
                                raise NotValid
                            if not (isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL2' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL3' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL2R' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL3R' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL2P' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL3P' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL2X' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CL3X' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CM' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CMG' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CMR' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CMP' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'CMX' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'PLTC' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'NM' or isinstance(data__cables_item__marking, str) and data__cables_item__marking == 'none'):
                                raise NotValid
                        if "in_wall" in data__cables_item_keys:
                            data__cables_item_keys.remove("in_wall")
                            data__cables_item__inwall = data__cables_item["in_wall"]
                            if not isinstance(data__cables_item__inwall, (bool)):
                                raise NotValid
                        if "plenum" in data__cables_item_keys:
                            data__cables_item_keys.remove("plenum")
                            data__cables_item__plenum = data__cables_item["plenum"]
                            if not isinstance(data__cables_item__plenum, (bool)):
                                raise NotValid
                        if "raceway" in data__cables_item_keys:
                            data__cables_item_keys.remove("raceway")
                            data__cables_item__raceway = data__cables_item["raceway"]
                            if not isinstance(data__cables_item__raceway, (str)):
                                raise NotValid
                            if isinstance(data__cables_item__raceway, str):
                                data__cables_item__raceway_len = len(data__cables_item__raceway)
                                if data__cables_item__raceway_len < 1:
                                    raise NotValid
                                if data__cables_item__raceway_len > 63:
                                    raise NotValid
                        if "beside_power" in data__cables_item_keys:
                            data__cables_item_keys.remove("beside_power")
                            data__cables_item__besidepower = data__cables_item["beside_power"]
                            room____defs_length(data__cables_item__besidepower)
                        if "power_exception" in data__cables_item_keys:
                            data__cables_item_keys.remove("power_exception")
                            data__cables_item__powerexception = data__cables_item["power_exception"]
                            if not isinstance(data__cables_item__powerexception, (str)):
                                raise NotValid
                            if isinstance(data__cables_item__powerexception, str):
                                data__cables_item__powerexception_len = len(data__cables_item__powerexception)
                                if data__cables_item__powerexception_len < 1:
                                    raise NotValid
                                if data__cables_item__powerexception_len > 400:
                                    raise NotValid
                        if "edge_distance" in data__cables_item_keys:
                            data__cables_item_keys.remove("edge_distance")
                            data__cables_item__edgedistance = data__cables_item["edge_distance"]
                            room____defs_length(data__cables_item__edgedistance)
                        if "nail_plate" in data__cables_item_keys:
                            data__cables_item_keys.remove("nail_plate")
                            data__cables_item__nailplate = data__cables_item["nail_plate"]
                            if not isinstance(data__cables_item__nailplate, (bool)):
                                raise NotValid
                        if "active" in data__cables_item_keys:
                            data__cables_item_keys.remove("active")
                            data__cables_item__active = data__cables_item["active"]
                            if not isinstance(data__cables_item__active, (bool)):
                                raise NotValid
                        if "rate" in data__cables_item_keys:
                            data__cables_item_keys.remove("rate")
                            data__cables_item__rate = data__cables_item["rate"]
                            room____defs_data_rate(data__cables_item__rate)
                        if "bend_radius" in data__cables_item_keys:
                            data__cables_item_keys.remove("bend_radius")
                            data__cables_item__bendradius = data__cables_item["bend_radius"]
                            room____defs_length(data__cables_item__bendradius)
                        if "bundle" in data__cables_item_keys:
                            data__cables_item_keys.remove("bundle")
                            data__cables_item__bundle = data__cables_item["bundle"]
                            if not isinstance(data__cables_item__bundle, (int)) and not (isinstance(data__cables_item__bundle, float) and data__cables_item__bundle.is_integer()) or isinstance(data__cables_item__bundle, bool):
                                raise NotValid
                            if isinstance(data__cables_item__bundle, (int, float)) and not isinstance(data__cables_item__bundle, bool):
                                if data__cables_item__bundle < 1:
                                    raise NotValid
                                if data__cables_item__bundle > 200:
                                    raise NotValid
                        if "ambient" in data__cables_item_keys:
                            data__cables_item_keys.remove("ambient")
                            data__cables_item__ambient = data__cables_item["ambient"]
                            room____defs_temperature(data__cables_item__ambient)
                        if data__cables_item_keys:
                            raise NotValid
        if "circuits" in data_keys:
            data_keys.remove("circuits")
            data__circuits = data["circuits"]
            if not isinstance(data__circuits, (list, tuple)):
                raise NotValid
            data__circuits_is_list = isinstance(data__circuits, (list, tuple))
            if data__circuits_is_list:
                data__circuits_len = len(data__circuits)
                if data__circuits_len > 40:
                    raise NotValid
                for data__circuits_x, data__circuits_item in enumerate(data__circuits):
                    if not isinstance(data__circuits_item, (dict)):
                        raise NotValid
                    data__circuits_item_is_dict = isinstance(data__circuits_item, dict)
                    if data__circuits_item_is_dict:
                        data__circuits_item__missing_keys = set(['id']) - data__circuits_item.keys()
                        if data__circuits_item__missing_keys:
                            raise NotValid
                        data__circuits_item_keys = set(data__circuits_item.keys())
                        if "id" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("id")
                            data__circuits_item__id = data__circuits_item["id"]
                            room____defs_id(data__circuits_item__id)
                        if "rating" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("rating")
                            data__circuits_item__rating = data__circuits_item["rating"]
                            room____defs_current(data__circuits_item__rating)
                        if "voltage" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("voltage")
                            data__circuits_item__voltage = data__circuits_item["voltage"]
                            room____defs_voltage(data__circuits_item__voltage)
                        if "conductor" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("conductor")
                            data__circuits_item__conductor = data__circuits_item["conductor"]
                            room____defs_conductor(data__circuits_item__conductor)
                        if "material" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("material")
                            data__circuits_item__material = data__circuits_item["material"]
                            if not isinstance(data__circuits_item__material, (str)):
                                raise NotValid
                            if not (isinstance(data__circuits_item__material, str) and data__circuits_item__material == 'copper' or isinstance(data__circuits_item__material, str) and data__circuits_item__material == 'aluminium'):
                                raise NotValid
                        if "length" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("length")
                            data__circuits_item__length = data__circuits_item["length"]
                            room____defs_length(data__circuits_item__length)
                        if "dedicated" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("dedicated")
                            data__circuits_item__dedicated = data__circuits_item["dedicated"]
                            if not isinstance(data__circuits_item__dedicated, (bool)):
                                raise NotValid
                        if "feeds_lighting" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("feeds_lighting")
                            data__circuits_item__feedslighting = data__circuits_item["feeds_lighting"]
                            if not isinstance(data__circuits_item__feedslighting, (bool)):
                                raise NotValid
                        if "new" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("new")
                            data__circuits_item__new = data__circuits_item["new"]
                            if not isinstance(data__circuits_item__new, (bool)):
                                raise NotValid
                        if "afci" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("afci")
                            data__circuits_item__afci = data__circuits_item["afci"]
                            if not isinstance(data__circuits_item__afci, (bool)):
                                raise NotValid
                        if "gfci" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("gfci")
                            data__circuits_item__gfci = data__circuits_item["gfci"]
                            if not isinstance(data__circuits_item__gfci, (bool)):
                                raise NotValid
                        if "rcd" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("rcd")
                            data__circuits_item__rcd = data__circuits_item["rcd"]
                            room____defs_current(data__circuits_item__rcd)
                        if "sequenced" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("sequenced")
                            data__circuits_item__sequenced = data__circuits_item["sequenced"]
                            if not isinstance(data__circuits_item__sequenced, (bool)):
                                raise NotValid
                        if "earth_lifted" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("earth_lifted")
                            data__circuits_item__earthlifted = data__circuits_item["earth_lifted"]
                            if not isinstance(data__circuits_item__earthlifted, (bool)):
                                raise NotValid
                        if "feeder_drop" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("feeder_drop")
                            data__circuits_item__feederdrop = data__circuits_item["feeder_drop"]
                            if not isinstance(data__circuits_item__feederdrop, (int, float)) or isinstance(data__circuits_item__feederdrop, bool):
                                raise NotValid
                            if isinstance(data__circuits_item__feederdrop, (int, float)) and not isinstance(data__circuits_item__feederdrop, bool):
                                if data__circuits_item__feederdrop < 0:
                                    raise NotValid
                                if data__circuits_item__feederdrop > 20:
                                    raise NotValid
                        if "receptacles" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("receptacles")
                            data__circuits_item__receptacles = data__circuits_item["receptacles"]
                            if not isinstance(data__circuits_item__receptacles, (list, tuple)):
                                raise NotValid
                            data__circuits_item__receptacles_is_list = isinstance(data__circuits_item__receptacles, (list, tuple))
                            if data__circuits_item__receptacles_is_list:
                                data__circuits_item__receptacles_len = len(data__circuits_item__receptacles)
                                if data__circuits_item__receptacles_len > 40:
                                    raise NotValid
                                for data__circuits_item__receptacles_x, data__circuits_item__receptacles_item in enumerate(data__circuits_item__receptacles):
                                    if not isinstance(data__circuits_item__receptacles_item, (dict)):
                                        raise NotValid
                                    data__circuits_item__receptacles_item_is_dict = isinstance(data__circuits_item__receptacles_item, dict)
                                    if data__circuits_item__receptacles_item_is_dict:
                                        data__circuits_item__receptacles_item__missing_keys = set(['id']) - data__circuits_item__receptacles_item.keys()
                                        if data__circuits_item__receptacles_item__missing_keys:
                                            raise NotValid
                                        data__circuits_item__receptacles_item_keys = set(data__circuits_item__receptacles_item.keys())
                                        if "id" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("id")
                                            data__circuits_item__receptacles_item__id = data__circuits_item__receptacles_item["id"]
                                            room____defs_id(data__circuits_item__receptacles_item__id)
                                        if "rating" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("rating")
                                            data__circuits_item__receptacles_item__rating = data__circuits_item__receptacles_item["rating"]
                                            room____defs_current(data__circuits_item__receptacles_item__rating)
                                        if "wall" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("wall")
                                            data__circuits_item__receptacles_item__wall = data__circuits_item__receptacles_item["wall"]
                                            if not isinstance(data__circuits_item__receptacles_item__wall, (str)):
                                                raise NotValid
                                            if isinstance(data__circuits_item__receptacles_item__wall, str):
                                                data__circuits_item__receptacles_item__wall_len = len(data__circuits_item__receptacles_item__wall)
                                                if data__circuits_item__receptacles_item__wall_len < 1:
                                                    raise NotValid
                                                if data__circuits_item__receptacles_item__wall_len > 63:
                                                    raise NotValid
                                        if "from_wall_left" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("from_wall_left")
                                            data__circuits_item__receptacles_item__fromwallleft = data__circuits_item__receptacles_item["from_wall_left"]
                                            room____defs_length(data__circuits_item__receptacles_item__fromwallleft)
                                        if "height" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("height")
                                            data__circuits_item__receptacles_item__height = data__circuits_item__receptacles_item["height"]
                                            room____defs_length(data__circuits_item__receptacles_item__height)
                                        if "facing_up" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("facing_up")
                                            data__circuits_item__receptacles_item__facingup = data__circuits_item__receptacles_item["facing_up"]
                                            if not isinstance(data__circuits_item__receptacles_item__facingup, (bool)):
                                                raise NotValid
                                        if "listed_for_floor" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("listed_for_floor")
                                            data__circuits_item__receptacles_item__listedforfloor = data__circuits_item__receptacles_item["listed_for_floor"]
                                            if not isinstance(data__circuits_item__receptacles_item__listedforfloor, (bool)):
                                                raise NotValid
                                        if "tamper_resistant" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("tamper_resistant")
                                            data__circuits_item__receptacles_item__tamperresistant = data__circuits_item__receptacles_item["tamper_resistant"]
                                            if not isinstance(data__circuits_item__receptacles_item__tamperresistant, (bool)):
                                                raise NotValid
                                        if "dimmed" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("dimmed")
                                            data__circuits_item__receptacles_item__dimmed = data__circuits_item__receptacles_item["dimmed"]
                                            if not isinstance(data__circuits_item__receptacles_item__dimmed, (bool)):
                                                raise NotValid
                                        if "in_cabinet" in data__circuits_item__receptacles_item_keys:
                                            data__circuits_item__receptacles_item_keys.remove("in_cabinet")
                                            data__circuits_item__receptacles_item__incabinet = data__circuits_item__receptacles_item["in_cabinet"]
                                            if not isinstance(data__circuits_item__receptacles_item__incabinet, (bool)):
                                                raise NotValid
                                        if data__circuits_item__receptacles_item_keys:
                                            raise NotValid
                        if "loads" in data__circuits_item_keys:
                            data__circuits_item_keys.remove("loads")
                            data__circuits_item__loads = data__circuits_item["loads"]
                            if not isinstance(data__circuits_item__loads, (list, tuple)):
                                raise NotValid
                            data__circuits_item__loads_is_list = isinstance(data__circuits_item__loads, (list, tuple))
                            if data__circuits_item__loads_is_list:
                                data__circuits_item__loads_len = len(data__circuits_item__loads)
                                if data__circuits_item__loads_len > 60:
                                    raise NotValid
                                for data__circuits_item__loads_x, data__circuits_item__loads_item in enumerate(data__circuits_item__loads):
                                    if not isinstance(data__circuits_item__loads_item, (dict)):
                                        raise NotValid
                                    data__circuits_item__loads_item_is_dict = isinstance(data__circuits_item__loads_item, dict)
                                    if data__circuits_item__loads_item_is_dict:
                                        data__circuits_item__loads_item__missing_keys = set(['id']) - data__circuits_item__loads_item.keys()
                                        if data__circuits_item__loads_item__missing_keys:
                                            raise NotValid
                                        data__circuits_item__loads_item_keys = set(data__circuits_item__loads_item.keys())
                                        if "id" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("id")
                                            data__circuits_item__loads_item__id = data__circuits_item__loads_item["id"]
                                            room____defs_id(data__circuits_item__loads_item__id)
                                        if "what" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("what")
                                            data__circuits_item__loads_item__what = data__circuits_item__loads_item["what"]
                                            if not isinstance(data__circuits_item__loads_item__what, (str)):
                                                raise NotValid
                                            if isinstance(data__circuits_item__loads_item__what, str):
                                                data__circuits_item__loads_item__what_len = len(data__circuits_item__loads_item__what)
                                                if data__circuits_item__loads_item__what_len < 1:
                                                    raise NotValid
                                                if data__circuits_item__loads_item__what_len > 400:
                                                    raise NotValid
                                        if "feeds" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("feeds")
                                            data__circuits_item__loads_item__feeds = data__circuits_item__loads_item["feeds"]
                                            if not isinstance(data__circuits_item__loads_item__feeds, (str)):
                                                raise NotValid
                                            if isinstance(data__circuits_item__loads_item__feeds, str):
                                                data__circuits_item__loads_item__feeds_len = len(data__circuits_item__loads_item__feeds)
                                                if data__circuits_item__loads_item__feeds_len < 1:
                                                    raise NotValid
                                                if data__circuits_item__loads_item__feeds_len > 63:
                                                    raise NotValid
                                        if "apparent_power" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("apparent_power")
                                            data__circuits_item__loads_item__apparentpower = data__circuits_item__loads_item["apparent_power"]
                                            room____defs_apparent_power(data__circuits_item__loads_item__apparentpower)
                                        if "current" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("current")
                                            data__circuits_item__loads_item__current = data__circuits_item__loads_item["current"]
                                            room____defs_current(data__circuits_item__loads_item__current)
                                        if "continuous" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("continuous")
                                            data__circuits_item__loads_item__continuous = data__circuits_item__loads_item["continuous"]
                                            if not isinstance(data__circuits_item__loads_item__continuous, (bool)):
                                                raise NotValid
                                        if "connection" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("connection")
                                            data__circuits_item__loads_item__connection = data__circuits_item__loads_item["connection"]
                                            if not isinstance(data__circuits_item__loads_item__connection, (str)):
                                                raise NotValid
                                            if not (isinstance(data__circuits_item__loads_item__connection, str) and data__circuits_item__loads_item__connection == 'plug' or isinstance(data__circuits_item__loads_item__connection, str) and data__circuits_item__loads_item__connection == 'fastened'):
                                                raise NotValid
                                        if "receptacle" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("receptacle")
                                            data__circuits_item__loads_item__receptacle = data__circuits_item__loads_item["receptacle"]
                                            if not isinstance(data__circuits_item__loads_item__receptacle, (str)):
                                                raise NotValid
                                            if isinstance(data__circuits_item__loads_item__receptacle, str):
                                                data__circuits_item__loads_item__receptacle_len = len(data__circuits_item__loads_item__receptacle)
                                                if data__circuits_item__loads_item__receptacle_len < 1:
                                                    raise NotValid
                                                if data__circuits_item__loads_item__receptacle_len > 63:
                                                    raise NotValid
                                        if "cord_concealed" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("cord_concealed")
                                            data__circuits_item__loads_item__cordconcealed = data__circuits_item__loads_item["cord_concealed"]
                                            if not isinstance(data__circuits_item__loads_item__cordconcealed, (bool)):
                                                raise NotValid
                                        if "listed_inlet_kit" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("listed_inlet_kit")
                                            data__circuits_item__loads_item__listedinletkit = data__circuits_item__loads_item["listed_inlet_kit"]
                                            if not isinstance(data__circuits_item__loads_item__listedinletkit, (bool)):
                                                raise NotValid
                                        if "linear_supply" in data__circuits_item__loads_item_keys:
                                            data__circuits_item__loads_item_keys.remove("linear_supply")
                                            data__circuits_item__loads_item__linearsupply = data__circuits_item__loads_item["linear_supply"]
                                            if not isinstance(data__circuits_item__loads_item__linearsupply, (bool)):
                                                raise NotValid
                                        if data__circuits_item__loads_item_keys:
                                            raise NotValid
                        if data__circuits_item_keys:
                            raise NotValid
        if "listening_modes" in data_keys:
            data_keys.remove("listening_modes")
            data__listeningmodes = data["listening_modes"]
            if not isinstance(data__listeningmodes, (list, tuple)):
                raise NotValid
            data__listeningmodes_is_list = isinstance(data__listeningmodes, (list, tuple))
            if data__listeningmodes_is_list:
                data__listeningmodes_len = len(data__listeningmodes)
                if data__listeningmodes_len > 20:
                    raise NotValid
                for data__listeningmodes_x, data__listeningmodes_item in enumerate(data__listeningmodes):
                    if not isinstance(data__listeningmodes_item, (dict)):
                        raise NotValid
                    data__listeningmodes_item_is_dict = isinstance(data__listeningmodes_item, dict)
                    if data__listeningmodes_item_is_dict:
                        data__listeningmodes_item__missing_keys = set(['id']) - data__listeningmodes_item.keys()
                        if data__listeningmodes_item__missing_keys:
                            raise NotValid
                        data__listeningmodes_item_keys = set(data__listeningmodes_item.keys())
                        if "id" in data__listeningmodes_item_keys:
                            data__listeningmodes_item_keys.remove("id")
                            data__listeningmodes_item__id = data__listeningmodes_item["id"]
                            room____defs_id(data__listeningmodes_item__id)
                        if "title" in data__listeningmodes_item_keys:
                            data__listeningmodes_item_keys.remove("title")
                            data__listeningmodes_item__title = data__listeningmodes_item["title"]
                            if not isinstance(data__listeningmodes_item__title, (str)):
                                raise NotValid
                            if isinstance(data__listeningmodes_item__title, str):
                                data__listeningmodes_item__title_len = len(data__listeningmodes_item__title)
                                if data__listeningmodes_item__title_len < 1:
                                    raise NotValid
                                if data__listeningmodes_item__title_len > 400:
                                    raise NotValid
                        if "layout" in data__listeningmodes_item_keys:
                            data__listeningmodes_item_keys.remove("layout")
                            data__listeningmodes_item__layout = data__listeningmodes_item["layout"]
                            room____defs_layout(data__listeningmodes_item__layout)
                        if "channels" in data__listeningmodes_item_keys:
                            data__listeningmodes_item_keys.remove("channels")
                            data__listeningmodes_item__channels = data__listeningmodes_item["channels"]
                            if not isinstance(data__listeningmodes_item__channels, (list, tuple)):
                                raise NotValid
                            data__listeningmodes_item__channels_is_list = isinstance(data__listeningmodes_item__channels, (list, tuple))
                            if data__listeningmodes_item__channels_is_list:
                                data__listeningmodes_item__channels_len = len(data__listeningmodes_item__channels)
                                if data__listeningmodes_item__channels_len > 40:
                                    raise NotValid
                                for data__listeningmodes_item__channels_x, data__listeningmodes_item__channels_item in enumerate(data__listeningmodes_item__channels):
                                    room____defs_label(data__listeningmodes_item__channels_item)
                        if data__listeningmodes_item_keys:
                            raise NotValid
        if "calibration" in data_keys:
            data_keys.remove("calibration")
            data__calibration = data["calibration"]
            if not isinstance(data__calibration, (dict)):
                raise NotValid
            data__calibration_is_dict = isinstance(data__calibration, dict)
            if data__calibration_is_dict:
                data__calibration_keys = set(data__calibration.keys())
                if "reference_level" in data__calibration_keys:
                    data__calibration_keys.remove("reference_level")
                    data__calibration__referencelevel = data__calibration["reference_level"]
                    room____defs_level(data__calibration__referencelevel)
                if "hours_a_week" in data__calibration_keys:
                    data__calibration_keys.remove("hours_a_week")
                    data__calibration__hoursaweek = data__calibration["hours_a_week"]
                    if not isinstance(data__calibration__hoursaweek, (int, float)) or isinstance(data__calibration__hoursaweek, bool):
                        raise NotValid
                    if isinstance(data__calibration__hoursaweek, (int, float)) and not isinstance(data__calibration__hoursaweek, bool):
                        if data__calibration__hoursaweek < 0:
                            raise NotValid
                        if data__calibration__hoursaweek > 168:
                            raise NotValid
                if "settings" in data__calibration_keys:
                    data__calibration_keys.remove("settings")
                    data__calibration__settings = data__calibration["settings"]
                    if not isinstance(data__calibration__settings, (list, tuple)):
                        raise NotValid
                    data__calibration__settings_is_list = isinstance(data__calibration__settings, (list, tuple))
                    if data__calibration__settings_is_list:
                        data__calibration__settings_len = len(data__calibration__settings)
                        if data__calibration__settings_len > 80:
                            raise NotValid
                        for data__calibration__settings_x, data__calibration__settings_item in enumerate(data__calibration__settings):
                            if not isinstance(data__calibration__settings_item, (dict)):
                                raise NotValid
                            data__calibration__settings_item_is_dict = isinstance(data__calibration__settings_item, dict)
                            if data__calibration__settings_item_is_dict:
                                data__calibration__settings_item__missing_keys = set(['id']) - data__calibration__settings_item.keys()
                                if data__calibration__settings_item__missing_keys:
                                    raise NotValid
                                data__calibration__settings_item_keys = set(data__calibration__settings_item.keys())
                                if "id" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("id")
                                    data__calibration__settings_item__id = data__calibration__settings_item["id"]
                                    if not isinstance(data__calibration__settings_item__id, (str)):
                                        raise NotValid
                                    if isinstance(data__calibration__settings_item__id, str):
                                        data__calibration__settings_item__id_len = len(data__calibration__settings_item__id)
                                        if data__calibration__settings_item__id_len < 1:
                                            raise NotValid
                                        if data__calibration__settings_item__id_len > 63:
                                            raise NotValid
                                if "delay" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("delay")
                                    data__calibration__settings_item__delay = data__calibration__settings_item["delay"]
                                    room____defs_time(data__calibration__settings_item__delay)
                                if "distance" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("distance")
                                    data__calibration__settings_item__distance = data__calibration__settings_item["distance"]
                                    room____defs_length(data__calibration__settings_item__distance)
                                if "level" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("level")
                                    data__calibration__settings_item__level = data__calibration__settings_item["level"]
                                    room____defs_level(data__calibration__settings_item__level)
                                if "measured_level" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("measured_level")
                                    data__calibration__settings_item__measuredlevel = data__calibration__settings_item["measured_level"]
                                    room____defs_level(data__calibration__settings_item__measuredlevel)
                                if "crossover" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("crossover")
                                    data__calibration__settings_item__crossover = data__calibration__settings_item["crossover"]
                                    room____defs_frequency(data__calibration__settings_item__crossover)
                                if "inverted" in data__calibration__settings_item_keys:
                                    data__calibration__settings_item_keys.remove("inverted")
                                    data__calibration__settings_item__inverted = data__calibration__settings_item["inverted"]
                                    if not isinstance(data__calibration__settings_item__inverted, (bool)):
                                        raise NotValid
                                if data__calibration__settings_item_keys:
                                    raise NotValid
                if "steps" in data__calibration_keys:
                    data__calibration_keys.remove("steps")
                    data__calibration__steps = data__calibration["steps"]
                    if not isinstance(data__calibration__steps, (list, tuple)):
                        raise NotValid
                    data__calibration__steps_is_list = isinstance(data__calibration__steps, (list, tuple))
                    if data__calibration__steps_is_list:
                        data__calibration__steps_len = len(data__calibration__steps)
                        if data__calibration__steps_len > 200:
                            raise NotValid
                        for data__calibration__steps_x, data__calibration__steps_item in enumerate(data__calibration__steps):
                            room____defs_step(data__calibration__steps_item)
                if data__calibration_keys:
                    raise NotValid
        if "handover" in data_keys:
            data_keys.remove("handover")
            data__handover = data["handover"]
            if not isinstance(data__handover, (list, tuple)):
                raise NotValid
            data__handover_is_list = isinstance(data__handover, (list, tuple))
            if data__handover_is_list:
                data__handover_len = len(data__handover)
                if data__handover_len > 300:
                    raise NotValid
                for data__handover_x, data__handover_item in enumerate(data__handover):
                    room____defs_step(data__handover_item)
        if "waivers" in data_keys:
            data_keys.remove("waivers")
            data__waivers = data["waivers"]
            if not isinstance(data__waivers, (list, tuple)):
                raise NotValid
            data__waivers_is_list = isinstance(data__waivers, (list, tuple))
            if data__waivers_is_list:
                data__waivers_len = len(data__waivers)
                if data__waivers_len > 200:
                    raise NotValid
                for data__waivers_x, data__waivers_item in enumerate(data__waivers):
                    if not isinstance(data__waivers_item, (dict)):
                        raise NotValid
                    data__waivers_item_is_dict = isinstance(data__waivers_item, dict)
                    if data__waivers_item_is_dict:
                        data__waivers_item__missing_keys = set(['rule', 'subject']) - data__waivers_item.keys()
                        if data__waivers_item__missing_keys:
                            raise NotValid
                        data__waivers_item_keys = set(data__waivers_item.keys())
                        if "rule" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("rule")
                            data__waivers_item__rule = data__waivers_item["rule"]
                            if not isinstance(data__waivers_item__rule, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__rule, str):
                                data__waivers_item__rule_len = len(data__waivers_item__rule)
                                if data__waivers_item__rule_len < 1:
                                    raise NotValid
                                if data__waivers_item__rule_len > 80:
                                    raise NotValid
                        if "subject" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("subject")
                            data__waivers_item__subject = data__waivers_item["subject"]
                            if not isinstance(data__waivers_item__subject, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__subject, str):
                                data__waivers_item__subject_len = len(data__waivers_item__subject)
                                if data__waivers_item__subject_len < 1:
                                    raise NotValid
                                if data__waivers_item__subject_len > 200:
                                    raise NotValid
                        if "because" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("because")
                            data__waivers_item__because = data__waivers_item["because"]
                            if not isinstance(data__waivers_item__because, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__because, str):
                                data__waivers_item__because_len = len(data__waivers_item__because)
                                if data__waivers_item__because_len < 1:
                                    raise NotValid
                                if data__waivers_item__because_len > 1000:
                                    raise NotValid
                        if "approved_by" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("approved_by")
                            data__waivers_item__approvedby = data__waivers_item["approved_by"]
                            if not isinstance(data__waivers_item__approvedby, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__approvedby, str):
                                data__waivers_item__approvedby_len = len(data__waivers_item__approvedby)
                                if data__waivers_item__approvedby_len < 1:
                                    raise NotValid
                                if data__waivers_item__approvedby_len > 400:
                                    raise NotValid
                        if "until" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("until")
                            data__waivers_item__until = data__waivers_item["until"]
                            if not isinstance(data__waivers_item__until, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__until, str):
                                if not PATTERNS_ROOM['^[0-9]{4}-[0-9]{2}-[0-9]{2}$'].search(data__waivers_item__until):
                                    raise NotValid
                        if "bound" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("bound")
                            data__waivers_item__bound = data__waivers_item["bound"]
                            if not isinstance(data__waivers_item__bound, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__bound, str):
                                data__waivers_item__bound_len = len(data__waivers_item__bound)
                                if data__waivers_item__bound_len < 1:
                                    raise NotValid
                                if data__waivers_item__bound_len > 80:
                                    raise NotValid
                        if "document" in data__waivers_item_keys:
                            data__waivers_item_keys.remove("document")
                            data__waivers_item__document = data__waivers_item["document"]
                            if not isinstance(data__waivers_item__document, (str)):
                                raise NotValid
                            if isinstance(data__waivers_item__document, str):
                                data__waivers_item__document_len = len(data__waivers_item__document)
                                if data__waivers_item__document_len < 1:
                                    raise NotValid
                                if data__waivers_item__document_len > 400:
                                    raise NotValid
                        if data__waivers_item_keys:
                            raise NotValid
        if data_keys:
            raise NotValid
    return data

def room____defs_step(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'what']) - data.keys()
        if data__missing_keys:
            raise NotValid
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            room____defs_id(data__id)
        if "what" in data_keys:
            data_keys.remove("what")
            data__what = data["what"]
            if not isinstance(data__what, (str)):
                raise NotValid
            if isinstance(data__what, str):
                data__what_len = len(data__what)
                if data__what_len < 1:
                    raise NotValid
                if data__what_len > 400:
                    raise NotValid
        if "done" in data_keys:
            data_keys.remove("done")
            data__done = data["done"]
            if not isinstance(data__done, (bool)):
                raise NotValid
        if "by" in data_keys:
            data_keys.remove("by")
            data__by = data["by"]
            if not isinstance(data__by, (str)):
                raise NotValid
            if isinstance(data__by, str):
                data__by_len = len(data__by)
                if data__by_len < 1:
                    raise NotValid
                if data__by_len > 400:
                    raise NotValid
        if "on" in data_keys:
            data_keys.remove("on")
            data__on = data["on"]
            if not isinstance(data__on, (str)):
                raise NotValid
            if isinstance(data__on, str):
                data__on_len = len(data__on)
                if data__on_len < 1:
                    raise NotValid
                if data__on_len > 10:
                    raise NotValid
        if "evidence" in data_keys:
            data_keys.remove("evidence")
            data__evidence = data["evidence"]
            if not isinstance(data__evidence, (str)):
                raise NotValid
            if isinstance(data__evidence, str):
                data__evidence_len = len(data__evidence)
                if data__evidence_len < 1:
                    raise NotValid
                if data__evidence_len > 400:
                    raise NotValid
        if data_keys:
            raise NotValid
    return data

def room____defs_apparent_power(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_voltage(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_current(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_data_rate(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_conductor(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_airflow(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_frequency(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_time(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_level(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_departure(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['because']) - data.keys()
        if data__missing_keys:
            raise NotValid
        data_keys = set(data.keys())
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            if not isinstance(data__because, (str)):
                raise NotValid
            if isinstance(data__because, str):
                data__because_len = len(data__because)
                if data__because_len < 1:
                    raise NotValid
                if data__because_len > 400:
                    raise NotValid
        if "meets" in data_keys:
            data_keys.remove("meets")
            data__meets = data["meets"]
            if not isinstance(data__meets, (str)):
                raise NotValid
            if not (isinstance(data__meets, str) and data__meets == 'home-tolerance' or isinstance(data__meets, str) and data__meets == 'common-practice' or isinstance(data__meets, str) and data__meets == 'none'):
                raise NotValid
        if data_keys:
            raise NotValid
    return data

def room____defs_aim(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "seat" in data_keys:
            data_keys.remove("seat")
            data__seat = data["seat"]
            if not isinstance(data__seat, (str)):
                raise NotValid
            if isinstance(data__seat, str):
                data__seat_len = len(data__seat)
                if data__seat_len < 1:
                    raise NotValid
                if data__seat_len > 63:
                    raise NotValid
        if "azimuth" in data_keys:
            data_keys.remove("azimuth")
            data__azimuth = data["azimuth"]
            room____defs_angle(data__azimuth)
        if "elevation" in data_keys:
            data_keys.remove("elevation")
            data__elevation = data["elevation"]
            room____defs_angle(data__elevation)
        if data_keys:
            raise NotValid
    return data

def room____defs_label(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        if not PATTERNS_ROOM['^((M|U|UH|T|B)[+-](0[0-9]{2}|1[0-7][0-9]|180)|M[+-]SC|LFE[12]?)$'].search(data):
            raise NotValid
    return data

def room____defs_layout(data):
    if not isinstance(data, (str)):
        raise NotValid
    if not (isinstance(data, str) and data == '0+2+0' or isinstance(data, str) and data == '0+5+0' or isinstance(data, str) and data == '2+5+0' or isinstance(data, str) and data == '4+5+0' or isinstance(data, str) and data == '4+5+1' or isinstance(data, str) and data == '3+7+0' or isinstance(data, str) and data == '4+9+0' or isinstance(data, str) and data == '9+10+3' or isinstance(data, str) and data == '0+7+0' or isinstance(data, str) and data == '4+7+0'):
        raise NotValid
    return data

def room____defs_mounting(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "on" in data_keys:
            data_keys.remove("on")
            data__on = data["on"]
            if not isinstance(data__on, (str)):
                raise NotValid
            if isinstance(data__on, str):
                data__on_len = len(data__on)
                if data__on_len < 1:
                    raise NotValid
                if data__on_len > 63:
                    raise NotValid
        if "product" in data_keys:
            data_keys.remove("product")
            data__product = data["product"]
            if not isinstance(data__product, (str)):
                raise NotValid
            if isinstance(data__product, str):
                data__product_len = len(data__product)
                if data__product_len < 1:
                    raise NotValid
                if data__product_len > 63:
                    raise NotValid
        if "fixing" in data_keys:
            data_keys.remove("fixing")
            data__fixing = data["fixing"]
            room____defs_fixing(data__fixing)
        if "extension" in data_keys:
            data_keys.remove("extension")
            data__extension = data["extension"]
            room____defs_length(data__extension)
        if "swivel" in data_keys:
            data_keys.remove("swivel")
            data__swivel = data["swivel"]
            room____defs_angle(data__swivel)
        if "tilt" in data_keys:
            data_keys.remove("tilt")
            data__tilt = data["tilt"]
            room____defs_angle(data__tilt)
        if "drop" in data_keys:
            data_keys.remove("drop")
            data__drop = data["drop"]
            room____defs_length(data__drop)
        if "secondary" in data_keys:
            data_keys.remove("secondary")
            data__secondary = data["secondary"]
            if not isinstance(data__secondary, (str)):
                raise NotValid
            if isinstance(data__secondary, str):
                data__secondary_len = len(data__secondary)
                if data__secondary_len < 1:
                    raise NotValid
                if data__secondary_len > 400:
                    raise NotValid
        if "secondary_fall" in data_keys:
            data_keys.remove("secondary_fall")
            data__secondaryfall = data["secondary_fall"]
            room____defs_length(data__secondaryfall)
        if "sling_angle" in data_keys:
            data_keys.remove("sling_angle")
            data__slingangle = data["sling_angle"]
            room____defs_angle(data__slingangle)
        if "breaking_load" in data_keys:
            data_keys.remove("breaking_load")
            data__breakingload = data["breaking_load"]
            room____defs_force(data__breakingload)
        if "strap" in data_keys:
            data_keys.remove("strap")
            data__strap = data["strap"]
            if not isinstance(data__strap, (str)):
                raise NotValid
            if isinstance(data__strap, str):
                data__strap_len = len(data__strap)
                if data__strap_len < 1:
                    raise NotValid
                if data__strap_len > 400:
                    raise NotValid
        if "accessories" in data_keys:
            data_keys.remove("accessories")
            data__accessories = data["accessories"]
            room____defs_mass(data__accessories)
        if "carpet" in data_keys:
            data_keys.remove("carpet")
            data__carpet = data["carpet"]
            if not isinstance(data__carpet, (bool)):
                raise NotValid
        if data_keys:
            raise NotValid
    return data

def room____defs_force(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_illuminance(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_angle(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_position(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "from_left" in data_keys:
            data_keys.remove("from_left")
            data__fromleft = data["from_left"]
            room____defs_length(data__fromleft)
        if "from_right" in data_keys:
            data_keys.remove("from_right")
            data__fromright = data["from_right"]
            room____defs_length(data__fromright)
        if "from_front" in data_keys:
            data_keys.remove("from_front")
            data__fromfront = data["from_front"]
            room____defs_length(data__fromfront)
        if "from_rear" in data_keys:
            data_keys.remove("from_rear")
            data__fromrear = data["from_rear"]
            room____defs_length(data__fromrear)
        if "height" in data_keys:
            data_keys.remove("height")
            data__height = data["height"]
            room____defs_length(data__height)
        if data_keys:
            raise NotValid
    return data

def room____defs_fixing(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "fastener" in data_keys:
            data_keys.remove("fastener")
            data__fastener = data["fastener"]
            if not isinstance(data__fastener, (str)):
                raise NotValid
            if not (isinstance(data__fastener, str) and data__fastener == 'lag-screw' or isinstance(data__fastener, str) and data__fastener == 'wood-screw' or isinstance(data__fastener, str) and data__fastener == 'nail' or isinstance(data__fastener, str) and data__fastener == 'drywall-screw' or isinstance(data__fastener, str) and data__fastener == 'through-bolt' or isinstance(data__fastener, str) and data__fastener == 'toggle' or isinstance(data__fastener, str) and data__fastener == 'expansion-anchor' or isinstance(data__fastener, str) and data__fastener == 'structural-screw' or isinstance(data__fastener, str) and data__fastener == 'steel-screw' or isinstance(data__fastener, str) and data__fastener == 'adhesive' or isinstance(data__fastener, str) and data__fastener == 'strap'):
                raise NotValid
        if "into" in data_keys:
            data_keys.remove("into")
            data__into = data["into"]
            if not isinstance(data__into, (str)):
                raise NotValid
            if not (isinstance(data__into, str) and data__into == 'stud' or isinstance(data__into, str) and data__into == 'joist' or isinstance(data__into, str) and data__into == 'blocking' or isinstance(data__into, str) and data__into == 'beam' or isinstance(data__into, str) and data__into == 'steel-stud' or isinstance(data__into, str) and data__into == 'board' or isinstance(data__into, str) and data__into == 'masonry' or isinstance(data__into, str) and data__into == 'hollow-block' or isinstance(data__into, str) and data__into == 'concrete' or isinstance(data__into, str) and data__into == 'glass' or isinstance(data__into, str) and data__into == 'tile' or isinstance(data__into, str) and data__into == 'plaster' or isinstance(data__into, str) and data__into == 'grid'):
                raise NotValid
        if "diameter" in data_keys:
            data_keys.remove("diameter")
            data__diameter = data["diameter"]
            room____defs_length(data__diameter)
        if "length" in data_keys:
            data_keys.remove("length")
            data__length = data["length"]
            room____defs_length(data__length)
        if "thread" in data_keys:
            data_keys.remove("thread")
            data__thread = data["thread"]
            room____defs_length(data__thread)
        if "count" in data_keys:
            data_keys.remove("count")
            data__count = data["count"]
            if not isinstance(data__count, (int)) and not (isinstance(data__count, float) and data__count.is_integer()) or isinstance(data__count, bool):
                raise NotValid
            if isinstance(data__count, (int, float)) and not isinstance(data__count, bool):
                if data__count < 1:
                    raise NotValid
                if data__count > 32:
                    raise NotValid
        if "top_count" in data_keys:
            data_keys.remove("top_count")
            data__topcount = data["top_count"]
            if not isinstance(data__topcount, (int)) and not (isinstance(data__topcount, float) and data__topcount.is_integer()) or isinstance(data__topcount, bool):
                raise NotValid
            if isinstance(data__topcount, (int, float)) and not isinstance(data__topcount, bool):
                if data__topcount < 1:
                    raise NotValid
                if data__topcount > 16:
                    raise NotValid
        if "row_spacing" in data_keys:
            data_keys.remove("row_spacing")
            data__rowspacing = data["row_spacing"]
            room____defs_length(data__rowspacing)
        if "edge_offset" in data_keys:
            data_keys.remove("edge_offset")
            data__edgeoffset = data["edge_offset"]
            room____defs_length(data__edgeoffset)
        if "grain" in data_keys:
            data_keys.remove("grain")
            data__grain = data["grain"]
            if not isinstance(data__grain, (str)):
                raise NotValid
            if not (isinstance(data__grain, str) and data__grain == 'side' or isinstance(data__grain, str) and data__grain == 'end'):
                raise NotValid
        if "wet" in data_keys:
            data_keys.remove("wet")
            data__wet = data["wet"]
            if not isinstance(data__wet, (bool)):
                raise NotValid
        if "attic" in data_keys:
            data_keys.remove("attic")
            data__attic = data["attic"]
            if not isinstance(data__attic, (bool)):
                raise NotValid
        if "anchor_approval" in data_keys:
            data_keys.remove("anchor_approval")
            data__anchorapproval = data["anchor_approval"]
            if not isinstance(data__anchorapproval, (str)):
                raise NotValid
            if isinstance(data__anchorapproval, str):
                data__anchorapproval_len = len(data__anchorapproval)
                if data__anchorapproval_len < 1:
                    raise NotValid
                if data__anchorapproval_len > 400:
                    raise NotValid
        if "anchor_ultimate" in data_keys:
            data_keys.remove("anchor_ultimate")
            data__anchorultimate = data["anchor_ultimate"]
            room____defs_force(data__anchorultimate)
        if "backing" in data_keys:
            data_keys.remove("backing")
            data__backing = data["backing"]
            if not isinstance(data__backing, (str)):
                raise NotValid
            if isinstance(data__backing, str):
                data__backing_len = len(data__backing)
                if data__backing_len < 1:
                    raise NotValid
                if data__backing_len > 400:
                    raise NotValid
        if "engineer" in data_keys:
            data_keys.remove("engineer")
            data__engineer = data["engineer"]
            if not isinstance(data__engineer, (str)):
                raise NotValid
            if isinstance(data__engineer, str):
                data__engineer_len = len(data__engineer)
                if data__engineer_len < 1:
                    raise NotValid
                if data__engineer_len > 400:
                    raise NotValid
        if data_keys:
            raise NotValid
    return data

def room____defs_mass(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_board(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "material" in data_keys:
            data_keys.remove("material")
            data__material = data["material"]
            if not isinstance(data__material, (str)):
                raise NotValid
            if not (isinstance(data__material, str) and data__material == 'gypsum' or isinstance(data__material, str) and data__material == 'plaster-on-lath' or isinstance(data__material, str) and data__material == 'plywood' or isinstance(data__material, str) and data__material == 'osb' or isinstance(data__material, str) and data__material == 'foam-backed' or isinstance(data__material, str) and data__material == 'none'):
                raise NotValid
        if "layers" in data_keys:
            data_keys.remove("layers")
            data__layers = data["layers"]
            if not isinstance(data__layers, (int)) and not (isinstance(data__layers, float) and data__layers.is_integer()) or isinstance(data__layers, bool):
                raise NotValid
            if isinstance(data__layers, (int, float)) and not isinstance(data__layers, bool):
                if data__layers < 0:
                    raise NotValid
                if data__layers > 4:
                    raise NotValid
        if "thickness" in data_keys:
            data_keys.remove("thickness")
            data__thickness = data["thickness"]
            room____defs_length(data__thickness)
        if data_keys:
            raise NotValid
    return data

def room____defs_framing(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "kind" in data_keys:
            data_keys.remove("kind")
            data__kind = data["kind"]
            if not isinstance(data__kind, (str)):
                raise NotValid
            if not (isinstance(data__kind, str) and data__kind == 'wood-stud' or isinstance(data__kind, str) and data__kind == 'steel-stud' or isinstance(data__kind, str) and data__kind == 'joist' or isinstance(data__kind, str) and data__kind == 'truss' or isinstance(data__kind, str) and data__kind == 'engineered' or isinstance(data__kind, str) and data__kind == 'masonry' or isinstance(data__kind, str) and data__kind == 'hollow-block' or isinstance(data__kind, str) and data__kind == 'concrete' or isinstance(data__kind, str) and data__kind == 'unknown'):
                raise NotValid
        if "spacing" in data_keys:
            data_keys.remove("spacing")
            data__spacing = data["spacing"]
            room____defs_length(data__spacing)
        if "member_width" in data_keys:
            data_keys.remove("member_width")
            data__memberwidth = data["member_width"]
            room____defs_length(data__memberwidth)
        if "member_depth" in data_keys:
            data_keys.remove("member_depth")
            data__memberdepth = data["member_depth"]
            room____defs_length(data__memberdepth)
        if "species" in data_keys:
            data_keys.remove("species")
            data__species = data["species"]
            if not isinstance(data__species, (str)):
                raise NotValid
            if not (isinstance(data__species, str) and data__species == 'spruce-pine-fir' or isinstance(data__species, str) and data__species == 'spruce-pine-fir-south' or isinstance(data__species, str) and data__species == 'hem-fir' or isinstance(data__species, str) and data__species == 'hem-fir-north' or isinstance(data__species, str) and data__species == 'douglas-fir-larch' or isinstance(data__species, str) and data__species == 'douglas-fir-larch-north' or isinstance(data__species, str) and data__species == 'douglas-fir-south' or isinstance(data__species, str) and data__species == 'southern-pine' or isinstance(data__species, str) and data__species == 'mixed-southern-pine' or isinstance(data__species, str) and data__species == 'western-cedars' or isinstance(data__species, str) and data__species == 'eastern-softwoods' or isinstance(data__species, str) and data__species == 'northern-species' or isinstance(data__species, str) and data__species == 'redwood' or isinstance(data__species, str) and data__species == 'ponderosa-pine' or isinstance(data__species, str) and data__species == 'western-woods' or isinstance(data__species, str) and data__species == 'aspen' or isinstance(data__species, str) and data__species == 'northern-white-cedar' or isinstance(data__species, str) and data__species == 'red-oak' or isinstance(data__species, str) and data__species == 'white-oak' or isinstance(data__species, str) and data__species == 'mixed-maple' or isinstance(data__species, str) and data__species == 'yellow-poplar' or isinstance(data__species, str) and data__species == 'eastern-white-pine' or isinstance(data__species, str) and data__species == 'western-hemlock' or isinstance(data__species, str) and data__species == 'unknown'):
                raise NotValid
        if "steel_thickness" in data_keys:
            data_keys.remove("steel_thickness")
            data__steelthickness = data["steel_thickness"]
            room____defs_length(data__steelthickness)
        if "bearing" in data_keys:
            data_keys.remove("bearing")
            data__bearing = data["bearing"]
            if not isinstance(data__bearing, (bool)):
                raise NotValid
        if data_keys:
            raise NotValid
    return data

def room____defs_id(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        if not PATTERNS_ROOM['^[a-z0-9][a-z0-9-]{0,62}$'].search(data):
            raise NotValid
    return data

def room____defs_temperature(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def room____defs_length(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data
PATTERNS_PRODUCT = {
    '^[0-9]{2,4}x[0-9]{2,4}$': re.compile('^[0-9]{2,4}x[0-9]{2,4}\\Z'),
    '^M[0-9]{1,2}$': re.compile('^M[0-9]{1,2}\\Z'),
    '^[a-z0-9][a-z0-9-]{0,62}$': re.compile('^[a-z0-9][a-z0-9-]{0,62}\\Z')
}

NoneType = type(None)

def check_product(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['roomlint_product', 'id', 'kind']) - data.keys()
        if data__missing_keys:
            raise NotValid
        data_keys = set(data.keys())
        if "roomlint_product" in data_keys:
            data_keys.remove("roomlint_product")
            data__roomlintproduct = data["roomlint_product"]
            if not isinstance(data__roomlintproduct, (int)) and not (isinstance(data__roomlintproduct, float) and data__roomlintproduct.is_integer()) or isinstance(data__roomlintproduct, bool):
                raise NotValid
            if not (isinstance(data__roomlintproduct, (int, float)) and not isinstance(data__roomlintproduct, bool) and data__roomlintproduct == 1):
                raise NotValid
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            product____defs_id(data__id)
        if "kind" in data_keys:
            data_keys.remove("kind")
            data__kind = data["kind"]
            if not isinstance(data__kind, (str)):
                raise NotValid
            if not (isinstance(data__kind, str) and data__kind == 'loudspeaker' or isinstance(data__kind, str) and data__kind == 'subwoofer' or isinstance(data__kind, str) and data__kind == 'amplifier' or isinstance(data__kind, str) and data__kind == 'processor' or isinstance(data__kind, str) and data__kind == 'mount' or isinstance(data__kind, str) and data__kind == 'display' or isinstance(data__kind, str) and data__kind == 'screen' or isinstance(data__kind, str) and data__kind == 'projector' or isinstance(data__kind, str) and data__kind == 'seat' or isinstance(data__kind, str) and data__kind == 'source' or isinstance(data__kind, str) and data__kind == 'other'):
                raise NotValid
        if "title" in data_keys:
            data_keys.remove("title")
            data__title = data["title"]
            if not isinstance(data__title, (str)):
                raise NotValid
            if isinstance(data__title, str):
                data__title_len = len(data__title)
                if data__title_len < 1:
                    raise NotValid
                if data__title_len > 400:
                    raise NotValid
        if "provenance" in data_keys:
            data_keys.remove("provenance")
            data__provenance = data["provenance"]
            if not isinstance(data__provenance, (str)):
                raise NotValid
            if not (isinstance(data__provenance, str) and data__provenance == 'data-sheet' or isinstance(data__provenance, str) and data__provenance == 'measured' or isinstance(data__provenance, str) and data__provenance == 'assumed'):
                raise NotValid
        if "width" in data_keys:
            data_keys.remove("width")
            data__width = data["width"]
            product____defs_length(data__width)
        if "height" in data_keys:
            data_keys.remove("height")
            data__height = data["height"]
            product____defs_length(data__height)
        if "depth" in data_keys:
            data_keys.remove("depth")
            data__depth = data["depth"]
            product____defs_length(data__depth)
        if "mass" in data_keys:
            data_keys.remove("mass")
            data__mass = data["mass"]
            product____defs_mass(data__mass)
        if "apparent_power" in data_keys:
            data_keys.remove("apparent_power")
            data__apparentpower = data["apparent_power"]
            product____defs_apparent_power(data__apparentpower)
        if "power" in data_keys:
            data_keys.remove("power")
            data__power = data["power"]
            product____defs_power(data__power)
        if "idle_power" in data_keys:
            data_keys.remove("idle_power")
            data__idlepower = data["idle_power"]
            product____defs_power(data__idlepower)
        if "maximum_inlet" in data_keys:
            data_keys.remove("maximum_inlet")
            data__maximuminlet = data["maximum_inlet"]
            product____defs_temperature(data__maximuminlet)
        if "clearance" in data_keys:
            data_keys.remove("clearance")
            data__clearance = data["clearance"]
            product____defs_length(data__clearance)
        if "loudspeaker" in data_keys:
            data_keys.remove("loudspeaker")
            data__loudspeaker = data["loudspeaker"]
            if not isinstance(data__loudspeaker, (dict)):
                raise NotValid
            data__loudspeaker_is_dict = isinstance(data__loudspeaker, dict)
            if data__loudspeaker_is_dict:
                data__loudspeaker_keys = set(data__loudspeaker.keys())
                if "sensitivity" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("sensitivity")
                    data__loudspeaker__sensitivity = data__loudspeaker["sensitivity"]
                    product____defs_level(data__loudspeaker__sensitivity)
                if "drive" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("drive")
                    data__loudspeaker__drive = data__loudspeaker["drive"]
                    if not isinstance(data__loudspeaker__drive, (str)):
                        raise NotValid
                    if not (isinstance(data__loudspeaker__drive, str) and data__loudspeaker__drive == '2.83 V' or isinstance(data__loudspeaker__drive, str) and data__loudspeaker__drive == '1 W'):
                        raise NotValid
                if "impedance" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("impedance")
                    data__loudspeaker__impedance = data__loudspeaker["impedance"]
                    product____defs_impedance(data__loudspeaker__impedance)
                if "minimum_impedance" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("minimum_impedance")
                    data__loudspeaker__minimumimpedance = data__loudspeaker["minimum_impedance"]
                    product____defs_impedance(data__loudspeaker__minimumimpedance)
                if "power_rating" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("power_rating")
                    data__loudspeaker__powerrating = data__loudspeaker["power_rating"]
                    product____defs_power(data__loudspeaker__powerrating)
                if "maximum_level" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("maximum_level")
                    data__loudspeaker__maximumlevel = data__loudspeaker["maximum_level"]
                    product____defs_level(data__loudspeaker__maximumlevel)
                if "low_limit" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("low_limit")
                    data__loudspeaker__lowlimit = data__loudspeaker["low_limit"]
                    product____defs_frequency(data__loudspeaker__lowlimit)
                if "high_limit" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("high_limit")
                    data__loudspeaker__highlimit = data__loudspeaker["high_limit"]
                    product____defs_frequency(data__loudspeaker__highlimit)
                if "horizontal_coverage" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("horizontal_coverage")
                    data__loudspeaker__horizontalcoverage = data__loudspeaker["horizontal_coverage"]
                    product____defs_angle(data__loudspeaker__horizontalcoverage)
                if "vertical_coverage" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("vertical_coverage")
                    data__loudspeaker__verticalcoverage = data__loudspeaker["vertical_coverage"]
                    product____defs_angle(data__loudspeaker__verticalcoverage)
                if "baffle_angle" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("baffle_angle")
                    data__loudspeaker__baffleangle = data__loudspeaker["baffle_angle"]
                    product____defs_angle(data__loudspeaker__baffleangle)
                if "driver_spacing" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("driver_spacing")
                    data__loudspeaker__driverspacing = data__loudspeaker["driver_spacing"]
                    product____defs_length(data__loudspeaker__driverspacing)
                if "crossover" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("crossover")
                    data__loudspeaker__crossover = data__loudspeaker["crossover"]
                    product____defs_frequency(data__loudspeaker__crossover)
                if "placement" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("placement")
                    data__loudspeaker__placement = data__loudspeaker["placement"]
                    if not isinstance(data__loudspeaker__placement, (list, tuple)):
                        raise NotValid
                    data__loudspeaker__placement_is_list = isinstance(data__loudspeaker__placement, (list, tuple))
                    if data__loudspeaker__placement_is_list:
                        data__loudspeaker__placement_len = len(data__loudspeaker__placement)
                        if data__loudspeaker__placement_len > 6:
                            raise NotValid
                        for data__loudspeaker__placement_x, data__loudspeaker__placement_item in enumerate(data__loudspeaker__placement):
                            if not isinstance(data__loudspeaker__placement_item, (str)):
                                raise NotValid
                            if not (isinstance(data__loudspeaker__placement_item, str) and data__loudspeaker__placement_item == 'in-wall' or isinstance(data__loudspeaker__placement_item, str) and data__loudspeaker__placement_item == 'on-wall' or isinstance(data__loudspeaker__placement_item, str) and data__loudspeaker__placement_item == 'in-ceiling' or isinstance(data__loudspeaker__placement_item, str) and data__loudspeaker__placement_item == 'stand' or isinstance(data__loudspeaker__placement_item, str) and data__loudspeaker__placement_item == 'floor' or isinstance(data__loudspeaker__placement_item, str) and data__loudspeaker__placement_item == 'behind-screen'):
                                raise NotValid
                if "port" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("port")
                    data__loudspeaker__port = data__loudspeaker["port"]
                    if not isinstance(data__loudspeaker__port, (dict)):
                        raise NotValid
                    data__loudspeaker__port_is_dict = isinstance(data__loudspeaker__port, dict)
                    if data__loudspeaker__port_is_dict:
                        data__loudspeaker__port__missing_keys = set(['face']) - data__loudspeaker__port.keys()
                        if data__loudspeaker__port__missing_keys:
                            raise NotValid
                        data__loudspeaker__port_keys = set(data__loudspeaker__port.keys())
                        if "face" in data__loudspeaker__port_keys:
                            data__loudspeaker__port_keys.remove("face")
                            data__loudspeaker__port__face = data__loudspeaker__port["face"]
                            if not isinstance(data__loudspeaker__port__face, (str)):
                                raise NotValid
                            if not (isinstance(data__loudspeaker__port__face, str) and data__loudspeaker__port__face == 'rear' or isinstance(data__loudspeaker__port__face, str) and data__loudspeaker__port__face == 'front' or isinstance(data__loudspeaker__port__face, str) and data__loudspeaker__port__face == 'bottom' or isinstance(data__loudspeaker__port__face, str) and data__loudspeaker__port__face == 'top' or isinstance(data__loudspeaker__port__face, str) and data__loudspeaker__port__face == 'side' or isinstance(data__loudspeaker__port__face, str) and data__loudspeaker__port__face == 'none'):
                                raise NotValid
                        if "diameter" in data__loudspeaker__port_keys:
                            data__loudspeaker__port_keys.remove("diameter")
                            data__loudspeaker__port__diameter = data__loudspeaker__port["diameter"]
                            product____defs_length(data__loudspeaker__port__diameter)
                        if "clearance" in data__loudspeaker__port_keys:
                            data__loudspeaker__port_keys.remove("clearance")
                            data__loudspeaker__port__clearance = data__loudspeaker__port["clearance"]
                            product____defs_length(data__loudspeaker__port__clearance)
                        if data__loudspeaker__port_keys:
                            raise NotValid
                if "base_width" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("base_width")
                    data__loudspeaker__basewidth = data__loudspeaker["base_width"]
                    product____defs_length(data__loudspeaker__basewidth)
                if "base_depth" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("base_depth")
                    data__loudspeaker__basedepth = data__loudspeaker["base_depth"]
                    product____defs_length(data__loudspeaker__basedepth)
                if "centre_of_gravity" in data__loudspeaker_keys:
                    data__loudspeaker_keys.remove("centre_of_gravity")
                    data__loudspeaker__centreofgravity = data__loudspeaker["centre_of_gravity"]
                    product____defs_length(data__loudspeaker__centreofgravity)
                if data__loudspeaker_keys:
                    raise NotValid
        if "amplifier" in data_keys:
            data_keys.remove("amplifier")
            data__amplifier = data["amplifier"]
            if not isinstance(data__amplifier, (dict)):
                raise NotValid
            data__amplifier_is_dict = isinstance(data__amplifier, dict)
            if data__amplifier_is_dict:
                data__amplifier_keys = set(data__amplifier.keys())
                if "channels" in data__amplifier_keys:
                    data__amplifier_keys.remove("channels")
                    data__amplifier__channels = data__amplifier["channels"]
                    if not isinstance(data__amplifier__channels, (int)) and not (isinstance(data__amplifier__channels, float) and data__amplifier__channels.is_integer()) or isinstance(data__amplifier__channels, bool):
                        raise NotValid
                    if isinstance(data__amplifier__channels, (int, float)) and not isinstance(data__amplifier__channels, bool):
                        if data__amplifier__channels < 1:
                            raise NotValid
                        if data__amplifier__channels > 64:
                            raise NotValid
                if "power" in data__amplifier_keys:
                    data__amplifier_keys.remove("power")
                    data__amplifier__power = data__amplifier["power"]
                    product____defs_power(data__amplifier__power)
                if "power_into" in data__amplifier_keys:
                    data__amplifier_keys.remove("power_into")
                    data__amplifier__powerinto = data__amplifier["power_into"]
                    product____defs_impedance(data__amplifier__powerinto)
                if "minimum_load" in data__amplifier_keys:
                    data__amplifier_keys.remove("minimum_load")
                    data__amplifier__minimumload = data__amplifier["minimum_load"]
                    product____defs_impedance(data__amplifier__minimumload)
                if "damping_factor" in data__amplifier_keys:
                    data__amplifier_keys.remove("damping_factor")
                    data__amplifier__dampingfactor = data__amplifier["damping_factor"]
                    if not isinstance(data__amplifier__dampingfactor, (int, float)) or isinstance(data__amplifier__dampingfactor, bool):
                        raise NotValid
                    if isinstance(data__amplifier__dampingfactor, (int, float)) and not isinstance(data__amplifier__dampingfactor, bool):
                        if data__amplifier__dampingfactor < 1:
                            raise NotValid
                        if data__amplifier__dampingfactor > 100000:
                            raise NotValid
                if "technology" in data__amplifier_keys:
                    data__amplifier_keys.remove("technology")
                    data__amplifier__technology = data__amplifier["technology"]
                    if not isinstance(data__amplifier__technology, (str)):
                        raise NotValid
                    if not (isinstance(data__amplifier__technology, str) and data__amplifier__technology == 'class-ab' or isinstance(data__amplifier__technology, str) and data__amplifier__technology == 'class-d'):
                        raise NotValid
                if "output_class" in data__amplifier_keys:
                    data__amplifier_keys.remove("output_class")
                    data__amplifier__outputclass = data__amplifier["output_class"]
                    if not isinstance(data__amplifier__outputclass, (str)):
                        raise NotValid
                    if not (isinstance(data__amplifier__outputclass, str) and data__amplifier__outputclass == 'class-1' or isinstance(data__amplifier__outputclass, str) and data__amplifier__outputclass == 'class-2' or isinstance(data__amplifier__outputclass, str) and data__amplifier__outputclass == 'class-3'):
                        raise NotValid
                if "linear_supply" in data__amplifier_keys:
                    data__amplifier_keys.remove("linear_supply")
                    data__amplifier__linearsupply = data__amplifier["linear_supply"]
                    if not isinstance(data__amplifier__linearsupply, (bool)):
                        raise NotValid
                if data__amplifier_keys:
                    raise NotValid
        if "processor" in data_keys:
            data_keys.remove("processor")
            data__processor = data["processor"]
            if not isinstance(data__processor, (dict)):
                raise NotValid
            data__processor_is_dict = isinstance(data__processor, dict)
            if data__processor_is_dict:
                data__processor_keys = set(data__processor.keys())
                if "channels" in data__processor_keys:
                    data__processor_keys.remove("channels")
                    data__processor__channels = data__processor["channels"]
                    if not isinstance(data__processor__channels, (int)) and not (isinstance(data__processor__channels, float) and data__processor__channels.is_integer()) or isinstance(data__processor__channels, bool):
                        raise NotValid
                    if isinstance(data__processor__channels, (int, float)) and not isinstance(data__processor__channels, bool):
                        if data__processor__channels < 1:
                            raise NotValid
                        if data__processor__channels > 64:
                            raise NotValid
                if "delay_range" in data__processor_keys:
                    data__processor_keys.remove("delay_range")
                    data__processor__delayrange = data__processor["delay_range"]
                    product____defs_time(data__processor__delayrange)
                if "delay_step" in data__processor_keys:
                    data__processor_keys.remove("delay_step")
                    data__processor__delaystep = data__processor["delay_step"]
                    product____defs_time(data__processor__delaystep)
                if "distance_step" in data__processor_keys:
                    data__processor_keys.remove("distance_step")
                    data__processor__distancestep = data__processor["distance_step"]
                    product____defs_length(data__processor__distancestep)
                if "assumed_temperature" in data__processor_keys:
                    data__processor_keys.remove("assumed_temperature")
                    data__processor__assumedtemperature = data__processor["assumed_temperature"]
                    product____defs_temperature(data__processor__assumedtemperature)
                if "speed_of_sound" in data__processor_keys:
                    data__processor_keys.remove("speed_of_sound")
                    data__processor__speedofsound = data__processor["speed_of_sound"]
                    product____defs_speed(data__processor__speedofsound)
                if "audio_latency" in data__processor_keys:
                    data__processor_keys.remove("audio_latency")
                    data__processor__audiolatency = data__processor["audio_latency"]
                    product____defs_time(data__processor__audiolatency)
                if data__processor_keys:
                    raise NotValid
        if "mount" in data_keys:
            data_keys.remove("mount")
            data__mount = data["mount"]
            if not isinstance(data__mount, (dict)):
                raise NotValid
            data__mount_is_dict = isinstance(data__mount, dict)
            if data__mount_is_dict:
                data__mount_keys = set(data__mount.keys())
                if "motion" in data__mount_keys:
                    data__mount_keys.remove("motion")
                    data__mount__motion = data__mount["motion"]
                    if not isinstance(data__mount__motion, (str)):
                        raise NotValid
                    if not (isinstance(data__mount__motion, str) and data__mount__motion == 'fixed' or isinstance(data__mount__motion, str) and data__mount__motion == 'tilt' or isinstance(data__mount__motion, str) and data__mount__motion == 'swivel' or isinstance(data__mount__motion, str) and data__mount__motion == 'articulated' or isinstance(data__mount__motion, str) and data__mount__motion == 'pole'):
                        raise NotValid
                if "rated_mass" in data__mount_keys:
                    data__mount_keys.remove("rated_mass")
                    data__mount__ratedmass = data__mount["rated_mass"]
                    product____defs_mass(data__mount__ratedmass)
                if "reach" in data__mount_keys:
                    data__mount_keys.remove("reach")
                    data__mount__reach = data__mount["reach"]
                    product____defs_length(data__mount__reach)
                if "side_reach" in data__mount_keys:
                    data__mount_keys.remove("side_reach")
                    data__mount__sidereach = data__mount["side_reach"]
                    product____defs_length(data__mount__sidereach)
                if "row_spacing" in data__mount_keys:
                    data__mount_keys.remove("row_spacing")
                    data__mount__rowspacing = data__mount["row_spacing"]
                    product____defs_length(data__mount__rowspacing)
                if "top_fasteners" in data__mount_keys:
                    data__mount_keys.remove("top_fasteners")
                    data__mount__topfasteners = data__mount["top_fasteners"]
                    if not isinstance(data__mount__topfasteners, (int)) and not (isinstance(data__mount__topfasteners, float) and data__mount__topfasteners.is_integer()) or isinstance(data__mount__topfasteners, bool):
                        raise NotValid
                    if isinstance(data__mount__topfasteners, (int, float)) and not isinstance(data__mount__topfasteners, bool):
                        if data__mount__topfasteners < 1:
                            raise NotValid
                        if data__mount__topfasteners > 16:
                            raise NotValid
                if "fasteners" in data__mount_keys:
                    data__mount_keys.remove("fasteners")
                    data__mount__fasteners = data__mount["fasteners"]
                    if not isinstance(data__mount__fasteners, (int)) and not (isinstance(data__mount__fasteners, float) and data__mount__fasteners.is_integer()) or isinstance(data__mount__fasteners, bool):
                        raise NotValid
                    if isinstance(data__mount__fasteners, (int, float)) and not isinstance(data__mount__fasteners, bool):
                        if data__mount__fasteners < 1:
                            raise NotValid
                        if data__mount__fasteners > 32:
                            raise NotValid
                if "plate_thickness" in data__mount_keys:
                    data__mount_keys.remove("plate_thickness")
                    data__mount__platethickness = data__mount["plate_thickness"]
                    product____defs_length(data__mount__platethickness)
                if "plate_holes" in data__mount_keys:
                    data__mount_keys.remove("plate_holes")
                    data__mount__plateholes = data__mount["plate_holes"]
                    product____defs_length(data__mount__plateholes)
                if "patterns" in data__mount_keys:
                    data__mount_keys.remove("patterns")
                    data__mount__patterns = data__mount["patterns"]
                    if not isinstance(data__mount__patterns, (list, tuple)):
                        raise NotValid
                    data__mount__patterns_is_list = isinstance(data__mount__patterns, (list, tuple))
                    if data__mount__patterns_is_list:
                        data__mount__patterns_len = len(data__mount__patterns)
                        if data__mount__patterns_len > 40:
                            raise NotValid
                        for data__mount__patterns_x, data__mount__patterns_item in enumerate(data__mount__patterns):
                            if not isinstance(data__mount__patterns_item, (str)):
                                raise NotValid
                            if isinstance(data__mount__patterns_item, str):
                                if not PATTERNS_PRODUCT['^[0-9]{2,4}x[0-9]{2,4}$'].search(data__mount__patterns_item):
                                    raise NotValid
                if "screws" in data__mount_keys:
                    data__mount_keys.remove("screws")
                    data__mount__screws = data__mount["screws"]
                    if not isinstance(data__mount__screws, (list, tuple)):
                        raise NotValid
                    data__mount__screws_is_list = isinstance(data__mount__screws, (list, tuple))
                    if data__mount__screws_is_list:
                        data__mount__screws_len = len(data__mount__screws)
                        if data__mount__screws_len > 8:
                            raise NotValid
                        for data__mount__screws_x, data__mount__screws_item in enumerate(data__mount__screws):
                            if not isinstance(data__mount__screws_item, (str)):
                                raise NotValid
                            if isinstance(data__mount__screws_item, str):
                                if not PATTERNS_PRODUCT['^M[0-9]{1,2}$'].search(data__mount__screws_item):
                                    raise NotValid
                if "swivel" in data__mount_keys:
                    data__mount_keys.remove("swivel")
                    data__mount__swivel = data__mount["swivel"]
                    product____defs_angle(data__mount__swivel)
                if "tilt" in data__mount_keys:
                    data__mount_keys.remove("tilt")
                    data__mount__tilt = data__mount["tilt"]
                    product____defs_angle(data__mount__tilt)
                if "listed" in data__mount_keys:
                    data__mount_keys.remove("listed")
                    data__mount__listed = data__mount["listed"]
                    if not isinstance(data__mount__listed, (str)):
                        raise NotValid
                    if isinstance(data__mount__listed, str):
                        data__mount__listed_len = len(data__mount__listed)
                        if data__mount__listed_len < 1:
                            raise NotValid
                        if data__mount__listed_len > 400:
                            raise NotValid
                if "breaking_load" in data__mount_keys:
                    data__mount_keys.remove("breaking_load")
                    data__mount__breakingload = data__mount["breaking_load"]
                    product____defs_force(data__mount__breakingload)
                if data__mount_keys:
                    raise NotValid
        if "picture" in data_keys:
            data_keys.remove("picture")
            data__picture = data["picture"]
            if not isinstance(data__picture, (dict)):
                raise NotValid
            data__picture_is_dict = isinstance(data__picture, dict)
            if data__picture_is_dict:
                data__picture_keys = set(data__picture.keys())
                if "diagonal" in data__picture_keys:
                    data__picture_keys.remove("diagonal")
                    data__picture__diagonal = data__picture["diagonal"]
                    product____defs_length(data__picture__diagonal)
                if "aspect" in data__picture_keys:
                    data__picture_keys.remove("aspect")
                    data__picture__aspect = data__picture["aspect"]
                    if not isinstance(data__picture__aspect, (int, float)) or isinstance(data__picture__aspect, bool):
                        raise NotValid
                    if isinstance(data__picture__aspect, (int, float)) and not isinstance(data__picture__aspect, bool):
                        if data__picture__aspect < 1:
                            raise NotValid
                        if data__picture__aspect > 4:
                            raise NotValid
                if "lines" in data__picture_keys:
                    data__picture_keys.remove("lines")
                    data__picture__lines = data__picture["lines"]
                    if not isinstance(data__picture__lines, (int)) and not (isinstance(data__picture__lines, float) and data__picture__lines.is_integer()) or isinstance(data__picture__lines, bool):
                        raise NotValid
                    if isinstance(data__picture__lines, (int, float)) and not isinstance(data__picture__lines, bool):
                        if data__picture__lines < 240:
                            raise NotValid
                        if data__picture__lines > 9000:
                            raise NotValid
                if "gain" in data__picture_keys:
                    data__picture_keys.remove("gain")
                    data__picture__gain = data__picture["gain"]
                    if not isinstance(data__picture__gain, (int, float)) or isinstance(data__picture__gain, bool):
                        raise NotValid
                    if isinstance(data__picture__gain, (int, float)) and not isinstance(data__picture__gain, bool):
                        if data__picture__gain < 0.1:
                            raise NotValid
                        if data__picture__gain > 5:
                            raise NotValid
                if "half_gain" in data__picture_keys:
                    data__picture_keys.remove("half_gain")
                    data__picture__halfgain = data__picture["half_gain"]
                    product____defs_angle(data__picture__halfgain)
                if "transparent" in data__picture_keys:
                    data__picture_keys.remove("transparent")
                    data__picture__transparent = data__picture["transparent"]
                    if not isinstance(data__picture__transparent, (bool)):
                        raise NotValid
                if "loss" in data__picture_keys:
                    data__picture_keys.remove("loss")
                    data__picture__loss = data__picture["loss"]
                    product____defs_level(data__picture__loss)
                if "pattern" in data__picture_keys:
                    data__picture_keys.remove("pattern")
                    data__picture__pattern = data__picture["pattern"]
                    if not isinstance(data__picture__pattern, (str)):
                        raise NotValid
                    if isinstance(data__picture__pattern, str):
                        if not PATTERNS_PRODUCT['^[0-9]{2,4}x[0-9]{2,4}$'].search(data__picture__pattern):
                            raise NotValid
                if "screw" in data__picture_keys:
                    data__picture_keys.remove("screw")
                    data__picture__screw = data__picture["screw"]
                    if not isinstance(data__picture__screw, (str)):
                        raise NotValid
                    if isinstance(data__picture__screw, str):
                        if not PATTERNS_PRODUCT['^M[0-9]{1,2}$'].search(data__picture__screw):
                            raise NotValid
                if "throw_min" in data__picture_keys:
                    data__picture_keys.remove("throw_min")
                    data__picture__throwmin = data__picture["throw_min"]
                    if not isinstance(data__picture__throwmin, (int, float)) or isinstance(data__picture__throwmin, bool):
                        raise NotValid
                    if isinstance(data__picture__throwmin, (int, float)) and not isinstance(data__picture__throwmin, bool):
                        if data__picture__throwmin < 0.1:
                            raise NotValid
                        if data__picture__throwmin > 20:
                            raise NotValid
                if "throw_max" in data__picture_keys:
                    data__picture_keys.remove("throw_max")
                    data__picture__throwmax = data__picture["throw_max"]
                    if not isinstance(data__picture__throwmax, (int, float)) or isinstance(data__picture__throwmax, bool):
                        raise NotValid
                    if isinstance(data__picture__throwmax, (int, float)) and not isinstance(data__picture__throwmax, bool):
                        if data__picture__throwmax < 0.1:
                            raise NotValid
                        if data__picture__throwmax > 20:
                            raise NotValid
                if "shift_reference" in data__picture_keys:
                    data__picture_keys.remove("shift_reference")
                    data__picture__shiftreference = data__picture["shift_reference"]
                    if not isinstance(data__picture__shiftreference, (str)):
                        raise NotValid
                    if not (isinstance(data__picture__shiftreference, str) and data__picture__shiftreference == 'full-height' or isinstance(data__picture__shiftreference, str) and data__picture__shiftreference == 'half-height'):
                        raise NotValid
                if "shift_vertical" in data__picture_keys:
                    data__picture_keys.remove("shift_vertical")
                    data__picture__shiftvertical = data__picture["shift_vertical"]
                    if not isinstance(data__picture__shiftvertical, (int, float)) or isinstance(data__picture__shiftvertical, bool):
                        raise NotValid
                    if isinstance(data__picture__shiftvertical, (int, float)) and not isinstance(data__picture__shiftvertical, bool):
                        if data__picture__shiftvertical < 0:
                            raise NotValid
                        if data__picture__shiftvertical > 500:
                            raise NotValid
                if "shift_horizontal" in data__picture_keys:
                    data__picture_keys.remove("shift_horizontal")
                    data__picture__shifthorizontal = data__picture["shift_horizontal"]
                    if not isinstance(data__picture__shifthorizontal, (int, float)) or isinstance(data__picture__shifthorizontal, bool):
                        raise NotValid
                    if isinstance(data__picture__shifthorizontal, (int, float)) and not isinstance(data__picture__shifthorizontal, bool):
                        if data__picture__shifthorizontal < 0:
                            raise NotValid
                        if data__picture__shifthorizontal > 500:
                            raise NotValid
                if "luminous_flux" in data__picture_keys:
                    data__picture_keys.remove("luminous_flux")
                    data__picture__luminousflux = data__picture["luminous_flux"]
                    product____defs_luminous_flux(data__picture__luminousflux)
                if "noise" in data__picture_keys:
                    data__picture_keys.remove("noise")
                    data__picture__noise = data__picture["noise"]
                    product____defs_level(data__picture__noise)
                if "video_latency" in data__picture_keys:
                    data__picture_keys.remove("video_latency")
                    data__picture__videolatency = data__picture["video_latency"]
                    product____defs_time(data__picture__videolatency)
                if data__picture_keys:
                    raise NotValid
        if data_keys:
            raise NotValid
    return data

def product____defs_luminous_flux(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_force(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_speed(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_time(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_angle(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_frequency(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_impedance(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_level(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_temperature(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_power(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_apparent_power(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_mass(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_length(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            raise NotValid
        if data_len > 80:
            raise NotValid
    return data

def product____defs_id(data):
    if not isinstance(data, (str)):
        raise NotValid
    if isinstance(data, str):
        if not PATTERNS_PRODUCT['^[a-z0-9][a-z0-9-]{0,62}$'].search(data):
            raise NotValid
    return data
PATTERNS_HOUSE = {
    '^house\\.[a-z0-9-]+$': re.compile('^house\\.[a-z0-9-]+\\Z')
}

NoneType = type(None)

def check_house(data):
    if not isinstance(data, (dict)):
        raise NotValid
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['roomlint_house']) - data.keys()
        if data__missing_keys:
            raise NotValid
        data_keys = set(data.keys())
        if "roomlint_house" in data_keys:
            data_keys.remove("roomlint_house")
            data__roomlinthouse = data["roomlint_house"]
            if not isinstance(data__roomlinthouse, (int)) and not (isinstance(data__roomlinthouse, float) and data__roomlinthouse.is_integer()) or isinstance(data__roomlinthouse, bool):
                raise NotValid
            if not (isinstance(data__roomlinthouse, (int, float)) and not isinstance(data__roomlinthouse, bool) and data__roomlinthouse == 1):
                raise NotValid
        if "title" in data_keys:
            data_keys.remove("title")
            data__title = data["title"]
            if not isinstance(data__title, (str)):
                raise NotValid
            if isinstance(data__title, str):
                data__title_len = len(data__title)
                if data__title_len < 1:
                    raise NotValid
                if data__title_len > 400:
                    raise NotValid
        if "products" in data_keys:
            data_keys.remove("products")
            data__products = data["products"]
            if not isinstance(data__products, (list, tuple)):
                raise NotValid
            data__products_is_list = isinstance(data__products, (list, tuple))
            if data__products_is_list:
                data__products_len = len(data__products)
                if data__products_len > 20:
                    raise NotValid
                for data__products_x, data__products_item in enumerate(data__products):
                    if not isinstance(data__products_item, (str)):
                        raise NotValid
                    if isinstance(data__products_item, str):
                        data__products_item_len = len(data__products_item)
                        if data__products_item_len < 1:
                            raise NotValid
                        if data__products_item_len > 200:
                            raise NotValid
        if "gate" in data_keys:
            data_keys.remove("gate")
            data__gate = data["gate"]
            if not isinstance(data__gate, (str)):
                raise NotValid
            if not (isinstance(data__gate, str) and data__gate == 'error' or isinstance(data__gate, str) and data__gate == 'warning' or isinstance(data__gate, str) and data__gate == 'note' or isinstance(data__gate, str) and data__gate == 'never'):
                raise NotValid
        if "gates" in data_keys:
            data_keys.remove("gates")
            data__gates = data["gates"]
            if not isinstance(data__gates, (dict)):
                raise NotValid
            data__gates_is_dict = isinstance(data__gates, dict)
            if data__gates_is_dict:
                data__gates_keys = set(data__gates.keys())
                if "survey" in data__gates_keys:
                    data__gates_keys.remove("survey")
                    data__gates__survey = data__gates["survey"]
                    if not isinstance(data__gates__survey, (str)):
                        raise NotValid
                    if not (isinstance(data__gates__survey, str) and data__gates__survey == 'error' or isinstance(data__gates__survey, str) and data__gates__survey == 'warning' or isinstance(data__gates__survey, str) and data__gates__survey == 'note' or isinstance(data__gates__survey, str) and data__gates__survey == 'never'):
                        raise NotValid
                if "design" in data__gates_keys:
                    data__gates_keys.remove("design")
                    data__gates__design = data__gates["design"]
                    if not isinstance(data__gates__design, (str)):
                        raise NotValid
                    if not (isinstance(data__gates__design, str) and data__gates__design == 'error' or isinstance(data__gates__design, str) and data__gates__design == 'warning' or isinstance(data__gates__design, str) and data__gates__design == 'note' or isinstance(data__gates__design, str) and data__gates__design == 'never'):
                        raise NotValid
                if "rough-in" in data__gates_keys:
                    data__gates_keys.remove("rough-in")
                    data__gates__roughin = data__gates["rough-in"]
                    if not isinstance(data__gates__roughin, (str)):
                        raise NotValid
                    if not (isinstance(data__gates__roughin, str) and data__gates__roughin == 'error' or isinstance(data__gates__roughin, str) and data__gates__roughin == 'warning' or isinstance(data__gates__roughin, str) and data__gates__roughin == 'note' or isinstance(data__gates__roughin, str) and data__gates__roughin == 'never'):
                        raise NotValid
                if "handover" in data__gates_keys:
                    data__gates_keys.remove("handover")
                    data__gates__handover = data__gates["handover"]
                    if not isinstance(data__gates__handover, (str)):
                        raise NotValid
                    if not (isinstance(data__gates__handover, str) and data__gates__handover == 'error' or isinstance(data__gates__handover, str) and data__gates__handover == 'warning' or isinstance(data__gates__handover, str) and data__gates__handover == 'note' or isinstance(data__gates__handover, str) and data__gates__handover == 'never'):
                        raise NotValid
                if data__gates_keys:
                    raise NotValid
        if "open" in data_keys:
            data_keys.remove("open")
            data__open = data["open"]
            if not isinstance(data__open, (dict)):
                raise NotValid
            data__open_is_dict = isinstance(data__open, dict)
            if data__open_is_dict:
                data__open_keys = set(data__open.keys())
                if "survey" in data__open_keys:
                    data__open_keys.remove("survey")
                    data__open__survey = data__open["survey"]
                    if not isinstance(data__open__survey, (str)):
                        raise NotValid
                    if not (isinstance(data__open__survey, str) and data__open__survey == 'never' or isinstance(data__open__survey, str) and data__open__survey == 'note' or isinstance(data__open__survey, str) and data__open__survey == 'warning' or isinstance(data__open__survey, str) and data__open__survey == 'error'):
                        raise NotValid
                if "design" in data__open_keys:
                    data__open_keys.remove("design")
                    data__open__design = data__open["design"]
                    if not isinstance(data__open__design, (str)):
                        raise NotValid
                    if not (isinstance(data__open__design, str) and data__open__design == 'never' or isinstance(data__open__design, str) and data__open__design == 'note' or isinstance(data__open__design, str) and data__open__design == 'warning' or isinstance(data__open__design, str) and data__open__design == 'error'):
                        raise NotValid
                if "rough-in" in data__open_keys:
                    data__open_keys.remove("rough-in")
                    data__open__roughin = data__open["rough-in"]
                    if not isinstance(data__open__roughin, (str)):
                        raise NotValid
                    if not (isinstance(data__open__roughin, str) and data__open__roughin == 'never' or isinstance(data__open__roughin, str) and data__open__roughin == 'note' or isinstance(data__open__roughin, str) and data__open__roughin == 'warning' or isinstance(data__open__roughin, str) and data__open__roughin == 'error'):
                        raise NotValid
                if "handover" in data__open_keys:
                    data__open_keys.remove("handover")
                    data__open__handover = data__open["handover"]
                    if not isinstance(data__open__handover, (str)):
                        raise NotValid
                    if not (isinstance(data__open__handover, str) and data__open__handover == 'never' or isinstance(data__open__handover, str) and data__open__handover == 'note' or isinstance(data__open__handover, str) and data__open__handover == 'warning' or isinstance(data__open__handover, str) and data__open__handover == 'error'):
                        raise NotValid
                if data__open_keys:
                    raise NotValid
        if "required_chapters" in data_keys:
            data_keys.remove("required_chapters")
            data__requiredchapters = data["required_chapters"]
            if not isinstance(data__requiredchapters, (dict)):
                raise NotValid
            data__requiredchapters_is_dict = isinstance(data__requiredchapters, dict)
            if data__requiredchapters_is_dict:
                data__requiredchapters_keys = set(data__requiredchapters.keys())
                if "survey" in data__requiredchapters_keys:
                    data__requiredchapters_keys.remove("survey")
                    data__requiredchapters__survey = data__requiredchapters["survey"]
                    if not isinstance(data__requiredchapters__survey, (list, tuple)):
                        raise NotValid
                    data__requiredchapters__survey_is_list = isinstance(data__requiredchapters__survey, (list, tuple))
                    if data__requiredchapters__survey_is_list:
                        data__requiredchapters__survey_len = len(data__requiredchapters__survey)
                        if data__requiredchapters__survey_len > 18:
                            raise NotValid
                        for data__requiredchapters__survey_x, data__requiredchapters__survey_item in enumerate(data__requiredchapters__survey):
                            if not isinstance(data__requiredchapters__survey_item, (str)):
                                raise NotValid
                            if not (isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'layout' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'angle' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'distance' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'aim' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'boundary' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'bass' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'level' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'decay' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'noise' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'channel' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'cable' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'mains' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'heat' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'mount' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'picture' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'access' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'handover' or isinstance(data__requiredchapters__survey_item, str) and data__requiredchapters__survey_item == 'file'):
                                raise NotValid
                if "design" in data__requiredchapters_keys:
                    data__requiredchapters_keys.remove("design")
                    data__requiredchapters__design = data__requiredchapters["design"]
                    if not isinstance(data__requiredchapters__design, (list, tuple)):
                        raise NotValid
                    data__requiredchapters__design_is_list = isinstance(data__requiredchapters__design, (list, tuple))
                    if data__requiredchapters__design_is_list:
                        data__requiredchapters__design_len = len(data__requiredchapters__design)
                        if data__requiredchapters__design_len > 18:
                            raise NotValid
                        for data__requiredchapters__design_x, data__requiredchapters__design_item in enumerate(data__requiredchapters__design):
                            if not isinstance(data__requiredchapters__design_item, (str)):
                                raise NotValid
                            if not (isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'layout' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'angle' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'distance' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'aim' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'boundary' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'bass' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'level' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'decay' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'noise' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'channel' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'cable' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'mains' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'heat' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'mount' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'picture' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'access' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'handover' or isinstance(data__requiredchapters__design_item, str) and data__requiredchapters__design_item == 'file'):
                                raise NotValid
                if "rough-in" in data__requiredchapters_keys:
                    data__requiredchapters_keys.remove("rough-in")
                    data__requiredchapters__roughin = data__requiredchapters["rough-in"]
                    if not isinstance(data__requiredchapters__roughin, (list, tuple)):
                        raise NotValid
                    data__requiredchapters__roughin_is_list = isinstance(data__requiredchapters__roughin, (list, tuple))
                    if data__requiredchapters__roughin_is_list:
                        data__requiredchapters__roughin_len = len(data__requiredchapters__roughin)
                        if data__requiredchapters__roughin_len > 18:
                            raise NotValid
                        for data__requiredchapters__roughin_x, data__requiredchapters__roughin_item in enumerate(data__requiredchapters__roughin):
                            if not isinstance(data__requiredchapters__roughin_item, (str)):
                                raise NotValid
                            if not (isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'layout' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'angle' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'distance' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'aim' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'boundary' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'bass' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'level' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'decay' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'noise' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'channel' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'cable' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'mains' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'heat' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'mount' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'picture' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'access' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'handover' or isinstance(data__requiredchapters__roughin_item, str) and data__requiredchapters__roughin_item == 'file'):
                                raise NotValid
                if "handover" in data__requiredchapters_keys:
                    data__requiredchapters_keys.remove("handover")
                    data__requiredchapters__handover = data__requiredchapters["handover"]
                    if not isinstance(data__requiredchapters__handover, (list, tuple)):
                        raise NotValid
                    data__requiredchapters__handover_is_list = isinstance(data__requiredchapters__handover, (list, tuple))
                    if data__requiredchapters__handover_is_list:
                        data__requiredchapters__handover_len = len(data__requiredchapters__handover)
                        if data__requiredchapters__handover_len > 18:
                            raise NotValid
                        for data__requiredchapters__handover_x, data__requiredchapters__handover_item in enumerate(data__requiredchapters__handover):
                            if not isinstance(data__requiredchapters__handover_item, (str)):
                                raise NotValid
                            if not (isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'layout' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'angle' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'distance' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'aim' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'boundary' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'bass' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'level' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'decay' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'noise' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'channel' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'cable' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'mains' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'heat' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'mount' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'picture' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'access' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'handover' or isinstance(data__requiredchapters__handover_item, str) and data__requiredchapters__handover_item == 'file'):
                                raise NotValid
                if data__requiredchapters_keys:
                    raise NotValid
        if "decisions" in data_keys:
            data_keys.remove("decisions")
            data__decisions = data["decisions"]
            if not isinstance(data__decisions, (list, tuple)):
                raise NotValid
            data__decisions_is_list = isinstance(data__decisions, (list, tuple))
            if data__decisions_is_list:
                data__decisions_len = len(data__decisions)
                if data__decisions_len > 200:
                    raise NotValid
                for data__decisions_x, data__decisions_item in enumerate(data__decisions):
                    if not isinstance(data__decisions_item, (dict)):
                        raise NotValid
                    data__decisions_item_is_dict = isinstance(data__decisions_item, dict)
                    if data__decisions_item_is_dict:
                        data__decisions_item__missing_keys = set(['rule', 'because']) - data__decisions_item.keys()
                        if data__decisions_item__missing_keys:
                            raise NotValid
                        data__decisions_item_keys = set(data__decisions_item.keys())
                        if "rule" in data__decisions_item_keys:
                            data__decisions_item_keys.remove("rule")
                            data__decisions_item__rule = data__decisions_item["rule"]
                            if not isinstance(data__decisions_item__rule, (str)):
                                raise NotValid
                            if isinstance(data__decisions_item__rule, str):
                                data__decisions_item__rule_len = len(data__decisions_item__rule)
                                if data__decisions_item__rule_len < 1:
                                    raise NotValid
                                if data__decisions_item__rule_len > 80:
                                    raise NotValid
                        if "low" in data__decisions_item_keys:
                            data__decisions_item_keys.remove("low")
                            data__decisions_item__low = data__decisions_item["low"]
                            if not isinstance(data__decisions_item__low, (str)):
                                raise NotValid
                            if isinstance(data__decisions_item__low, str):
                                data__decisions_item__low_len = len(data__decisions_item__low)
                                if data__decisions_item__low_len < 1:
                                    raise NotValid
                                if data__decisions_item__low_len > 80:
                                    raise NotValid
                        if "high" in data__decisions_item_keys:
                            data__decisions_item_keys.remove("high")
                            data__decisions_item__high = data__decisions_item["high"]
                            if not isinstance(data__decisions_item__high, (str)):
                                raise NotValid
                            if isinstance(data__decisions_item__high, str):
                                data__decisions_item__high_len = len(data__decisions_item__high)
                                if data__decisions_item__high_len < 1:
                                    raise NotValid
                                if data__decisions_item__high_len > 80:
                                    raise NotValid
                        if "level" in data__decisions_item_keys:
                            data__decisions_item_keys.remove("level")
                            data__decisions_item__level = data__decisions_item["level"]
                            if not isinstance(data__decisions_item__level, (str)):
                                raise NotValid
                            if not (isinstance(data__decisions_item__level, str) and data__decisions_item__level == 'error' or isinstance(data__decisions_item__level, str) and data__decisions_item__level == 'warning' or isinstance(data__decisions_item__level, str) and data__decisions_item__level == 'note'):
                                raise NotValid
                        if "because" in data__decisions_item_keys:
                            data__decisions_item_keys.remove("because")
                            data__decisions_item__because = data__decisions_item["because"]
                            if not isinstance(data__decisions_item__because, (str)):
                                raise NotValid
                            if isinstance(data__decisions_item__because, str):
                                data__decisions_item__because_len = len(data__decisions_item__because)
                                if data__decisions_item__because_len < 1:
                                    raise NotValid
                                if data__decisions_item__because_len > 1000:
                                    raise NotValid
                        if data__decisions_item_keys:
                            raise NotValid
        if "window_rules" in data_keys:
            data_keys.remove("window_rules")
            data__windowrules = data["window_rules"]
            if not isinstance(data__windowrules, (list, tuple)):
                raise NotValid
            data__windowrules_is_list = isinstance(data__windowrules, (list, tuple))
            if data__windowrules_is_list:
                data__windowrules_len = len(data__windowrules)
                if data__windowrules_len > 100:
                    raise NotValid
                for data__windowrules_x, data__windowrules_item in enumerate(data__windowrules):
                    if not isinstance(data__windowrules_item, (dict)):
                        raise NotValid
                    data__windowrules_item_is_dict = isinstance(data__windowrules_item, dict)
                    if data__windowrules_item_is_dict:
                        data__windowrules_item__missing_keys = set(['id', 'title', 'figure', 'each', 'level', 'basis']) - data__windowrules_item.keys()
                        if data__windowrules_item__missing_keys:
                            raise NotValid
                        data__windowrules_item_keys = set(data__windowrules_item.keys())
                        if "id" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("id")
                            data__windowrules_item__id = data__windowrules_item["id"]
                            if not isinstance(data__windowrules_item__id, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__id, str):
                                if not PATTERNS_HOUSE['^house\\.[a-z0-9-]+$'].search(data__windowrules_item__id):
                                    raise NotValid
                        if "title" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("title")
                            data__windowrules_item__title = data__windowrules_item["title"]
                            if not isinstance(data__windowrules_item__title, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__title, str):
                                data__windowrules_item__title_len = len(data__windowrules_item__title)
                                if data__windowrules_item__title_len < 1:
                                    raise NotValid
                                if data__windowrules_item__title_len > 400:
                                    raise NotValid
                        if "figure" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("figure")
                            data__windowrules_item__figure = data__windowrules_item["figure"]
                            if not isinstance(data__windowrules_item__figure, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__figure, str):
                                data__windowrules_item__figure_len = len(data__windowrules_item__figure)
                                if data__windowrules_item__figure_len < 1:
                                    raise NotValid
                                if data__windowrules_item__figure_len > 80:
                                    raise NotValid
                        if "each" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("each")
                            data__windowrules_item__each = data__windowrules_item["each"]
                            if not isinstance(data__windowrules_item__each, (dict)):
                                raise NotValid
                            data__windowrules_item__each_is_dict = isinstance(data__windowrules_item__each, dict)
                            if data__windowrules_item__each_is_dict:
                                data__windowrules_item__each_keys = set(data__windowrules_item__each.keys())
                                if "loudspeakers" in data__windowrules_item__each_keys:
                                    data__windowrules_item__each_keys.remove("loudspeakers")
                                    data__windowrules_item__each__loudspeakers = data__windowrules_item__each["loudspeakers"]
                                    if not isinstance(data__windowrules_item__each__loudspeakers, (list, tuple)):
                                        raise NotValid
                                    data__windowrules_item__each__loudspeakers_is_list = isinstance(data__windowrules_item__each__loudspeakers, (list, tuple))
                                    if data__windowrules_item__each__loudspeakers_is_list:
                                        data__windowrules_item__each__loudspeakers_len = len(data__windowrules_item__each__loudspeakers)
                                        if data__windowrules_item__each__loudspeakers_len > 40:
                                            raise NotValid
                                        for data__windowrules_item__each__loudspeakers_x, data__windowrules_item__each__loudspeakers_item in enumerate(data__windowrules_item__each__loudspeakers):
                                            if not isinstance(data__windowrules_item__each__loudspeakers_item, (str)):
                                                raise NotValid
                                            if isinstance(data__windowrules_item__each__loudspeakers_item, str):
                                                data__windowrules_item__each__loudspeakers_item_len = len(data__windowrules_item__each__loudspeakers_item)
                                                if data__windowrules_item__each__loudspeakers_item_len < 1:
                                                    raise NotValid
                                                if data__windowrules_item__each__loudspeakers_item_len > 8:
                                                    raise NotValid
                                if "subwoofers" in data__windowrules_item__each_keys:
                                    data__windowrules_item__each_keys.remove("subwoofers")
                                    data__windowrules_item__each__subwoofers = data__windowrules_item__each["subwoofers"]
                                    if not isinstance(data__windowrules_item__each__subwoofers, (bool)):
                                        raise NotValid
                                if "seats" in data__windowrules_item__each_keys:
                                    data__windowrules_item__each_keys.remove("seats")
                                    data__windowrules_item__each__seats = data__windowrules_item__each["seats"]
                                    if not isinstance(data__windowrules_item__each__seats, (str)):
                                        raise NotValid
                                    if not (isinstance(data__windowrules_item__each__seats, str) and data__windowrules_item__each__seats == 'reference' or isinstance(data__windowrules_item__each__seats, str) and data__windowrules_item__each__seats == 'every'):
                                        raise NotValid
                                if data__windowrules_item__each_keys:
                                    raise NotValid
                        if "low" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("low")
                            data__windowrules_item__low = data__windowrules_item["low"]
                            if not isinstance(data__windowrules_item__low, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__low, str):
                                data__windowrules_item__low_len = len(data__windowrules_item__low)
                                if data__windowrules_item__low_len < 1:
                                    raise NotValid
                                if data__windowrules_item__low_len > 80:
                                    raise NotValid
                        if "high" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("high")
                            data__windowrules_item__high = data__windowrules_item["high"]
                            if not isinstance(data__windowrules_item__high, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__high, str):
                                data__windowrules_item__high_len = len(data__windowrules_item__high)
                                if data__windowrules_item__high_len < 1:
                                    raise NotValid
                                if data__windowrules_item__high_len > 80:
                                    raise NotValid
                        if "level" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("level")
                            data__windowrules_item__level = data__windowrules_item["level"]
                            if not isinstance(data__windowrules_item__level, (str)):
                                raise NotValid
                            if not (isinstance(data__windowrules_item__level, str) and data__windowrules_item__level == 'error' or isinstance(data__windowrules_item__level, str) and data__windowrules_item__level == 'warning' or isinstance(data__windowrules_item__level, str) and data__windowrules_item__level == 'note'):
                                raise NotValid
                        if "basis" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("basis")
                            data__windowrules_item__basis = data__windowrules_item["basis"]
                            if not isinstance(data__windowrules_item__basis, (dict)):
                                raise NotValid
                            data__windowrules_item__basis_is_dict = isinstance(data__windowrules_item__basis, dict)
                            if data__windowrules_item__basis_is_dict:
                                data__windowrules_item__basis__missing_keys = set(['grade']) - data__windowrules_item__basis.keys()
                                if data__windowrules_item__basis__missing_keys:
                                    raise NotValid
                                data__windowrules_item__basis_keys = set(data__windowrules_item__basis.keys())
                                if "grade" in data__windowrules_item__basis_keys:
                                    data__windowrules_item__basis_keys.remove("grade")
                                    data__windowrules_item__basis__grade = data__windowrules_item__basis["grade"]
                                    if not isinstance(data__windowrules_item__basis__grade, (str)):
                                        raise NotValid
                                    if not (isinstance(data__windowrules_item__basis__grade, str) and data__windowrules_item__basis__grade == 'read' or isinstance(data__windowrules_item__basis__grade, str) and data__windowrules_item__basis__grade == 'second-hand' or isinstance(data__windowrules_item__basis__grade, str) and data__windowrules_item__basis__grade == 'practice' or isinstance(data__windowrules_item__basis__grade, str) and data__windowrules_item__basis__grade == 'memory'):
                                        raise NotValid
                                if "document" in data__windowrules_item__basis_keys:
                                    data__windowrules_item__basis_keys.remove("document")
                                    data__windowrules_item__basis__document = data__windowrules_item__basis["document"]
                                    if not isinstance(data__windowrules_item__basis__document, (str)):
                                        raise NotValid
                                    if isinstance(data__windowrules_item__basis__document, str):
                                        data__windowrules_item__basis__document_len = len(data__windowrules_item__basis__document)
                                        if data__windowrules_item__basis__document_len < 1:
                                            raise NotValid
                                        if data__windowrules_item__basis__document_len > 400:
                                            raise NotValid
                                if "edition" in data__windowrules_item__basis_keys:
                                    data__windowrules_item__basis_keys.remove("edition")
                                    data__windowrules_item__basis__edition = data__windowrules_item__basis["edition"]
                                    if not isinstance(data__windowrules_item__basis__edition, (str)):
                                        raise NotValid
                                    if isinstance(data__windowrules_item__basis__edition, str):
                                        data__windowrules_item__basis__edition_len = len(data__windowrules_item__basis__edition)
                                        if data__windowrules_item__basis__edition_len < 1:
                                            raise NotValid
                                        if data__windowrules_item__basis__edition_len > 400:
                                            raise NotValid
                                if "clause" in data__windowrules_item__basis_keys:
                                    data__windowrules_item__basis_keys.remove("clause")
                                    data__windowrules_item__basis__clause = data__windowrules_item__basis["clause"]
                                    if not isinstance(data__windowrules_item__basis__clause, (str)):
                                        raise NotValid
                                    if isinstance(data__windowrules_item__basis__clause, str):
                                        data__windowrules_item__basis__clause_len = len(data__windowrules_item__basis__clause)
                                        if data__windowrules_item__basis__clause_len < 1:
                                            raise NotValid
                                        if data__windowrules_item__basis__clause_len > 400:
                                            raise NotValid
                                if "note" in data__windowrules_item__basis_keys:
                                    data__windowrules_item__basis_keys.remove("note")
                                    data__windowrules_item__basis__note = data__windowrules_item__basis["note"]
                                    if not isinstance(data__windowrules_item__basis__note, (str)):
                                        raise NotValid
                                    if isinstance(data__windowrules_item__basis__note, str):
                                        data__windowrules_item__basis__note_len = len(data__windowrules_item__basis__note)
                                        if data__windowrules_item__basis__note_len < 1:
                                            raise NotValid
                                        if data__windowrules_item__basis__note_len > 400:
                                            raise NotValid
                                if data__windowrules_item__basis_keys:
                                    raise NotValid
                        if "message" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("message")
                            data__windowrules_item__message = data__windowrules_item["message"]
                            if not isinstance(data__windowrules_item__message, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__message, str):
                                data__windowrules_item__message_len = len(data__windowrules_item__message)
                                if data__windowrules_item__message_len < 1:
                                    raise NotValid
                                if data__windowrules_item__message_len > 400:
                                    raise NotValid
                        if "caution" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("caution")
                            data__windowrules_item__caution = data__windowrules_item["caution"]
                            if not isinstance(data__windowrules_item__caution, (str)):
                                raise NotValid
                            if isinstance(data__windowrules_item__caution, str):
                                data__windowrules_item__caution_len = len(data__windowrules_item__caution)
                                if data__windowrules_item__caution_len < 1:
                                    raise NotValid
                                if data__windowrules_item__caution_len > 400:
                                    raise NotValid
                        if "examples" in data__windowrules_item_keys:
                            data__windowrules_item_keys.remove("examples")
                            data__windowrules_item__examples = data__windowrules_item["examples"]
                            if not isinstance(data__windowrules_item__examples, (list, tuple)):
                                raise NotValid
                            data__windowrules_item__examples_is_list = isinstance(data__windowrules_item__examples, (list, tuple))
                            if data__windowrules_item__examples_is_list:
                                data__windowrules_item__examples_len = len(data__windowrules_item__examples)
                                if data__windowrules_item__examples_len > 20:
                                    raise NotValid
                                for data__windowrules_item__examples_x, data__windowrules_item__examples_item in enumerate(data__windowrules_item__examples):
                                    if not isinstance(data__windowrules_item__examples_item, (dict)):
                                        raise NotValid
                                    data__windowrules_item__examples_item_is_dict = isinstance(data__windowrules_item__examples_item, dict)
                                    if data__windowrules_item__examples_item_is_dict:
                                        data__windowrules_item__examples_item__missing_keys = set(['value', 'verdict']) - data__windowrules_item__examples_item.keys()
                                        if data__windowrules_item__examples_item__missing_keys:
                                            raise NotValid
                                        data__windowrules_item__examples_item_keys = set(data__windowrules_item__examples_item.keys())
                                        if "value" in data__windowrules_item__examples_item_keys:
                                            data__windowrules_item__examples_item_keys.remove("value")
                                            data__windowrules_item__examples_item__value = data__windowrules_item__examples_item["value"]
                                            if not isinstance(data__windowrules_item__examples_item__value, (str)):
                                                raise NotValid
                                            if isinstance(data__windowrules_item__examples_item__value, str):
                                                data__windowrules_item__examples_item__value_len = len(data__windowrules_item__examples_item__value)
                                                if data__windowrules_item__examples_item__value_len < 1:
                                                    raise NotValid
                                                if data__windowrules_item__examples_item__value_len > 80:
                                                    raise NotValid
                                        if "verdict" in data__windowrules_item__examples_item_keys:
                                            data__windowrules_item__examples_item_keys.remove("verdict")
                                            data__windowrules_item__examples_item__verdict = data__windowrules_item__examples_item["verdict"]
                                            if not isinstance(data__windowrules_item__examples_item__verdict, (str)):
                                                raise NotValid
                                            if not (isinstance(data__windowrules_item__examples_item__verdict, str) and data__windowrules_item__examples_item__verdict == 'pass' or isinstance(data__windowrules_item__examples_item__verdict, str) and data__windowrules_item__examples_item__verdict == 'fail'):
                                                raise NotValid
                                        if data__windowrules_item__examples_item_keys:
                                            raise NotValid
                        if data__windowrules_item_keys:
                            raise NotValid
        if data_keys:
            raise NotValid
    return data

CHECKS = {'room': check_room, 'product': check_product, 'house': check_house}
