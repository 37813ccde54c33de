// The script of the phone page, as text: the screens of an inspection and the block that comes out of them. It follows the form
// kit in the same scope and is run under test in a real browser.

export const phoneScript = String.raw`  var data = JSON.parse(document.getElementById('data').textContent);
  var app = document.getElementById('app');
  var key = 'troughline inspection ' + data.key;

  // Long distances in metres, or in feet where the liner is declared in inches.
  var far = data.unit === 'in' ? 'ft' : 'm';
  var farWords = data.unit === 'in' ? 'Feet' : 'Metres';
  var farInMm = data.unit === 'in' ? 304.8 : 1000;

  function fresh() {
    return {
      date: today(),
      meter: '', tonnes: '', by: '', gauge: '', gaugeError: '', unit: data.unit,
      entries: {}, places: [], gaps: {}, empty: '', loaded: '', findings: [], flights: [], view: 'start', at: 0
    };
  }

  var store = storeFor(key);
  var state = Object.assign(fresh(), store.load());
  var typing = '';

  function keep() {
    store.keep(state);
    var note = document.getElementById('kept');
    if (note) note.textContent = store.words();
  }

  function go(view, at) {
    state.view = view;
    state.at = at === undefined ? state.at : at;
    typing = '';
    keep();
    show();
    window.scrollTo(0, 0);
  }

  // ---------------------------------------------------------------- what there is to read

  function rows() {
    return data.points.concat(state.places.map(function (place, index) {
      return { id: 'place ' + index, label: place.chainage + ' ' + far + ' at ' + place.clock, writes: 'at ' + place.chainage + ' ' + far + ' clock ' + place.clock, where: [], clock: hours(place.clock), clockText: place.clock, liner: data.liners[0].name, last: null, expect: { words: '' } };
    }));
  }

  function linerOf(point) {
    return data.liners.filter(function (liner) { return liner.name === point.liner; })[0] || data.liners[0];
  }

  function hours(clock) {
    var parts = /^(\d{1,2}):([0-5]\d)$/.exec(clock);
    if (!parts || +parts[1] < 1 || +parts[1] > 12) return undefined;
    return (+parts[1] % 12) + +parts[2] / 60 || 12;
  }

  function inMillimetres(entry) {
    var value = number(entry.value);
    return value === undefined ? undefined : entry.unit === 'in' ? value * 25.4 : value;
  }

  function entryWords(entry) {
    if (!entry) return '';
    switch (entry.kind) {
      case 'thickness': return plain(entry.value) + ' ' + entry.unit;
      case 'colour': return entry.colour;
      case 'trough': return 'TROUGH SHOWING';
      default: return 'not seen' + (entry.note ? ': ' + entry.note : '');
    }
  }

  /** What makes a second look worth while; never stops anyone from writing down what was seen. */
  function warnings(point, entry) {
    var liner = linerOf(point);
    var found = [];
    if (!entry) return found;
    if (entry.kind === 'trough') found.push('Steel shows. Tell the person responsible at once.');
    if (entry.kind === 'thickness') {
      var mm = inMillimetres(entry);
      if (mm === undefined) return found;
      if (mm > liner.thickness + 1) found.push('Thicker than the liner when new (' + liner.thicknessWords + '). Gauge, unit or place?');
      else if (point.last && point.last.thickness !== null && mm > point.last.thickness + 0.6) found.push('Thicker than last time (' + point.last.words + ' on ' + point.last.date + '). Right point, right side, gauge set to zero?');
      else if (point.expect.most !== undefined && mm > point.expect.most + 0.05) found.push('Thicker than expected (' + point.expect.words + '). Look again.');
      if (point.expect.least !== undefined && mm < point.expect.least - 0.05) found.push('Thinner than expected (' + point.expect.words + '). Measure again; if it stays, tell the person responsible.');
      if (mm <= liner.condemn) found.push('At or below the condemn limit (' + liner.condemnWords + '). Tell the person responsible at once.');
    }
    if (entry.kind === 'colour' && point.expect.layers && point.expect.layers.indexOf(entry.colour) < 0) found.push('Expected ' + point.expect.layers.join(' or ') + '. Clean the place and look again.');
    return found;
  }

  // ---------------------------------------------------------------- the block that goes into the records

  function rowOf(point, entry) {
    var note = entry.note && entry.kind !== 'not seen' ? ' ' + quoted(entry.note) : '';
    switch (entry.kind) {
      case 'thickness': return number(entry.value) === undefined ? '' : point.writes + ' thickness ' + plain(entry.value) + ' ' + entry.unit + note;
      case 'colour': return point.writes + ' colour ' + entry.colour + note;
      case 'trough': return point.writes + ' trough showing' + note;
      default: return point.writes + ' not seen' + (entry.note ? ' ' + quoted(entry.note) : '');
    }
  }

  function blockText() {
    var lines = ['inspection ' + data.qualified + ' ' + state.date + ' meter ' + (number(state.meter) === undefined ? '?' : plain(state.meter)) + ' h' + (data.tonnes && number(state.tonnes) !== undefined ? ' tonnes ' + plain(state.tonnes) + ' t' : '') + ' {'];
    if (state.by.trim()) lines.push('  by ' + quoted(state.by));
    lines.push('  view ' + data.look);
    if (state.gauge) lines.push('  gauge ' + state.gauge + (number(state.gaugeError) ? ' ± ' + plain(state.gaugeError) + ' ' + data.unit : ''));
    rows().forEach(function (point) {
      var entry = state.entries[point.id];
      var row = entry ? rowOf(point, entry) : '';
      if (row) lines.push('  ' + row);
    });
    data.holdDowns.forEach(function (block) {
      var gap = state.gaps[block.name];
      if (number(gap) !== undefined) lines.push('  hold-down at ' + block.at + ' m gap ' + plain(gap) + ' ' + data.unit);
    });
    state.flights.forEach(function (flight) {
      if (number(flight.at) !== undefined && number(flight.depth) !== undefined) lines.push('  flight at ' + plain(flight.at) + ' ' + far + ' depth ' + plain(flight.depth) + ' ' + data.unit);
    });
    var current = [];
    if (number(state.empty) !== undefined) current.push('empty ' + plain(state.empty) + ' A');
    if (number(state.loaded) !== undefined) current.push('loaded ' + plain(state.loaded) + ' A');
    if (current.length) lines.push('  current ' + current.join(' '));
    state.findings.forEach(function (finding) {
      if (!finding.text.trim()) return;
      lines.push('  finding' + (finding.part ? ' ' + finding.part : '') + (number(finding.at) !== undefined ? ' at ' + plain(finding.at) + ' ' + far : '') + ' ' + quoted(finding.text));
    });
    lines.push('}');
    return lines.join('\n') + '\n';
  }

  function missing() {
    var found = [];
    if (!/^\d{4}-\d{2}-\d{2}$/.test(state.date)) found.push('the date');
    if (number(state.meter) === undefined) found.push('the hour meter');
    if (data.tonnes && number(state.tonnes) === undefined) found.push('the tonnes counter');
    return found;
  }

  // ---------------------------------------------------------------- the screens

  function banner() {
    return el('header', {}, [
      el('div', { class: 'who' }, data.name + ' ' + data.title),
      el('div', { class: 'look' }, 'LOOK ' + data.look.toUpperCase()),
      el('div', { class: 'way' }, data.look === 'downstream' ? 'Material moves away from you. 3 o’clock is on your right.' : 'Material comes towards you. 3 o’clock is on your right.')
    ]);
  }

  function startView() {
    var meterHint = data.meter.last === null ? '' : 'Last: ' + data.meter.last + ' h on ' + data.meter.date + (data.meter.about === null ? '' : '. About ' + data.meter.about + ' h expected on ' + data.asOf + '.');
    var hint = el('p', { id: 'meter-hint', class: 'hint' }, meterHint);
    var warning = el('p', { class: 'warn', role: 'status' });
    function judgeMeter(value) {
      state.meter = value;
      keep();
      var read = number(value);
      warning.textContent = read !== undefined && data.meter.last !== null && read < data.meter.last ? 'Lower than last time (' + data.meter.last + ' h). New meter, or misread?' : '';
    }
    judgeMeter(state.meter);
    return [
      el('section', { class: 'caution' }, [el('h2', {}, 'Before you open anything')].concat(data.cautions.map(function (caution) {
        return el('p', {}, [el('strong', {}, caution.heading), ' ' + caution.text]);
      }))),
      data.isolations.length ? el('section', {}, [el('h2', {}, 'Isolation points declared'), el('ul', {}, data.isolations.map(function (text) { return el('li', {}, text); }))]) : '',
      field('Date', state.date, function (value) { state.date = value; keep(); }, { type: 'date', id: 'date' }),
      field('Hour meter, h', state.meter, judgeMeter, { id: 'meter', inputmode: 'decimal' }),
      hint, warning,
      data.tonnes ? field('Tonnes counter, t' + (data.tonnes.last === null ? '' : ' (last ' + data.tonnes.last + ' t on ' + data.tonnes.date + ')'), state.tonnes, function (value) { state.tonnes = value; keep(); }, { id: 'tonnes', inputmode: 'decimal' }) : '',
      field('Who looks', state.by, function (value) { state.by = value; keep(); }, { id: 'by' }),
      el('div', { class: 'label' }, 'Gauge'),
      el('div', { class: 'grid two' }, ['ultrasonic', 'depth gauge', 'calliper', 'by eye'].map(function (kind) {
        return choice(kind, state.gauge === kind, function () { state.gauge = state.gauge === kind ? '' : kind; keep(); show(); });
      })),
      field('Gauge is right to ± ' + data.unit + ' (if known)', state.gaugeError, function (value) { state.gaugeError = value; keep(); }, { id: 'gauge-error', inputmode: 'decimal' }),
      button('Go to the points', function () { go('list'); }, { class: 'main', id: 'to-list' })
    ];
  }

  function listView() {
    var all = rows();
    var done = all.filter(function (point) { return state.entries[point.id]; }).length;
    return [
      el('p', { class: 'count' }, done + ' of ' + all.length + ' points written down'),
      el('div', { class: 'list' }, all.map(function (point, index) {
        var entry = state.entries[point.id];
        return button([
          el('strong', {}, point.label), el('span', { class: 'clock' }, point.clockText),
          el('span', { class: 'where' }, point.where[0] || ''),
          el('span', { class: 'value' }, entry ? '✓ ' + entryWords(entry) : 'open')
        ], function () { go('point', index); }, { class: 'row' + (entry ? ' done' : '') });
      })),
      button('Another place', function () { go('place'); }, { id: 'add-place' }),
      button('Hold-downs, current, findings', function () { go('more'); }, { id: 'to-more' }),
      button('Finish: give back the text', function () { go('finish'); }, { class: 'main', id: 'to-finish' }),
      button('Back to date and meter', function () { go('start'); })
    ];
  }

  function face(point) {
    var angle = (point.clock - 3) * Math.PI / 6;
    var x = 60 + 42 * Math.cos(angle), y = 52 + 42 * Math.sin(angle);
    if (point.clock > 9 || point.clock < 3) { x = point.clock > 9 ? 18 : 102; y = Math.max(14, y); }
    var picture = draw('svg', { viewBox: '0 0 120 116', class: 'face', role: 'img', 'aria-label': 'Clock face, point at ' + point.clockText });
    picture.appendChild(draw('path', { d: 'M18 8V52A42 42 0 0 0 102 52V8', fill: 'none', stroke: '#000', 'stroke-width': '5' }));
    [[3, 112, 57], [6, 60, 114], [9, 8, 57]].forEach(function (mark) { picture.appendChild(draw('text', { x: mark[1], y: mark[2], 'text-anchor': 'middle', 'font-size': '15', 'font-weight': 'bold' }, String(mark[0]))); });
    picture.appendChild(draw('line', { x1: 60, y1: 52, x2: x, y2: y, stroke: '#000', 'stroke-width': '2', 'stroke-dasharray': '4 3' }));
    picture.appendChild(draw('circle', { cx: x, cy: y, r: 8, fill: '#fff', stroke: '#000', 'stroke-width': '4' }));
    picture.appendChild(draw('circle', { cx: x, cy: y, r: 3, fill: '#000' }));
    return picture;
  }

  function pointView() {
    var all = rows();
    var point = all[state.at];
    if (!point) { state.view = 'list'; return listView(); }
    var entry = state.entries[point.id];
    var liner = linerOf(point);
    var unit = state.unit;
    if (typing === '' && entry && entry.kind === 'thickness') { typing = entry.value; unit = entry.unit; }

    function set(next) {
      if (next && entry && entry.note && next.note === undefined && next.kind !== 'not seen' && entry.kind !== 'not seen') next.note = entry.note;
      if (next) state.entries[point.id] = next; else delete state.entries[point.id];
      if (!next || next.kind !== 'thickness') typing = '';
      keep();
      show();
    }
    function type(sign) {
      if (sign === '⌫') typing = typing.slice(0, -1);
      else if (sign === '.' && typing.indexOf('.') >= 0) return;
      else if (typing.length < 6) typing += sign;
      // A lone point is the beginning of a number: kept on the display, not yet a reading.
      var begun = typing;
      set(number(typing) === undefined ? undefined : { kind: 'thickness', value: typing, unit: unit });
      if (typing !== begun) { typing = begun; show(); }
    }
    var pad = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0', '⌫'];
    var found = warnings(point, entry);
    var reasons = ['build-up', 'material in the way', 'cover not opened', 'out of reach', 'too dark'];
    return [
      el('section', { class: 'place' }, [
        el('div', {}, [
          el('div', { class: 'point' }, point.label),
          el('div', { class: 'at' }, point.clockText + ' o’clock'),
          el('div', { class: 'facts' }, point.where.map(function (text) { return el('div', {}, text); }))
        ]),
        face(point)
      ]),
      el('div', { class: 'before' }, [
        el('div', {}, [el('span', {}, 'Last: '), el('strong', {}, point.last ? point.last.words + ', ' + point.last.date : 'no reading')]),
        point.expect.words ? el('div', {}, [el('span', {}, 'Expect: '), el('strong', {}, point.expect.words)]) : ''
      ]),
      el('div', { class: 'display', id: 'display', role: 'status' }, entry ? entryWords(entry) : typing || 'nothing yet'),
      el('div', { class: 'pad' }, pad.map(function (sign) {
        return button(sign, function () { type(sign); }, { 'aria-label': sign === '⌫' ? 'delete' : sign === '.' ? 'point' : sign });
      })),
      el('div', { class: 'grid two' }, ['mm', 'in'].map(function (each) {
        return choice(each, unit === each, function () {
          state.unit = each;
          if (entry && entry.kind === 'thickness') set({ kind: 'thickness', value: entry.value, unit: each }); else { keep(); show(); }
        });
      })),
      el('div', { class: 'label' }, 'or the colour that shows'),
      el('div', { class: 'grid two' }, liner.layers.map(function (layer) {
        return choice(layer.name, Boolean(entry && entry.kind === 'colour' && entry.colour === layer.name), function () { set({ kind: 'colour', colour: layer.name }); });
      })),
      choice('TROUGH SHOWING (steel)', Boolean(entry && entry.kind === 'trough'), function () { set({ kind: 'trough' }); }, 'grave'),
      el('div', { class: 'label' }, 'or not seen, because of'),
      el('div', { class: 'grid two' }, reasons.map(function (reason) {
        return choice(reason, Boolean(entry && entry.kind === 'not seen' && entry.note === reason), function () { set({ kind: 'not seen', note: reason }); });
      }).concat([choice('not seen', Boolean(entry && entry.kind === 'not seen' && reasons.indexOf(entry.note) < 0), function () { set({ kind: 'not seen', note: '' }); })])),
      entry ? field('Remark', entry.note || '', function (value) { entry.note = value; state.entries[point.id] = entry; keep(); }, { id: 'note' }) : '',
      entry ? button('Clear this point', function () { set(undefined); }) : '',
      // Beside the buttons at the foot, so that the keypad never moves under a finger.
      el('nav', {}, [
        el('div', { class: 'warn', role: 'alert' }, found.map(function (text) { return el('p', {}, '! ' + text); })),
        button('◀', function () { go('point', Math.max(0, state.at - 1)); }, { 'aria-label': 'previous point', disabled: state.at === 0 }),
        button('List', function () { go('list'); }, { id: 'list' }),
        button(state.at + 1 < all.length ? 'Next ▶' : 'Done ▶', function () { if (state.at + 1 < all.length) go('point', state.at + 1); else go('list'); }, { class: 'main', id: 'next' })
      ])
    ];
  }

  function placeView() {
    var chainage = '', clock = '';
    var warning = el('p', { class: 'warn', role: 'alert' });
    return [
      el('h2', {}, 'Another place'),
      field(farWords + ' from the tail end', '', function (value) { chainage = value; }, { id: 'chainage', inputmode: 'decimal' }),
      field('Clock as you see it, like 7:30', '', function (value) { clock = value; }, { id: 'clock' }),
      warning,
      button('Add', function () {
        var at = number(chainage);
        var tidy = clock.trim().replace('.', ':');
        if (/^\d{1,2}$/.test(tidy)) tidy += ':00';
        if (at === undefined || at * farInMm > data.length) { warning.textContent = farWords + ' from 0 to ' + Math.floor(data.length / farInMm * 100) / 100 + '.'; return; }
        if (hours(tidy) === undefined) { warning.textContent = 'A clock position like 7:30, from 1:00 to 12:59.'; return; }
        state.places.push({ chainage: plain(chainage), clock: tidy });
        go('point', rows().length - 1);
      }, { class: 'main', id: 'place-add' }),
      button('Back', function () { go('list'); })
    ];
  }

  function moreView() {
    var parts = ['hold-down', 'brace', 'cover', 'flight', 'drive', 'trough', 'liner', 'bolt'];
    return [
      data.holdDowns.length ? el('section', {}, [el('h2', {}, 'Hold-down gaps, ' + data.unit)].concat(data.holdDowns.map(function (block) {
        return field(block.name + ' at ' + block.place + (block.last ? ' (last ' + block.last + ')' : ''), state.gaps[block.name] || '', function (value) { state.gaps[block.name] = value; keep(); }, { inputmode: 'decimal', 'data-gap': block.name });
      }))) : '',
      el('h2', {}, 'Motor current, A'),
      field('Empty', state.empty, function (value) { state.empty = value; keep(); }, { id: 'empty', inputmode: 'decimal' }),
      field('Loaded', state.loaded, function (value) { state.loaded = value; keep(); }, { id: 'loaded', inputmode: 'decimal' }),
      el('h2', {}, 'Flight depth'),
      el('div', {}, state.flights.map(function (flight, index) {
        return el('div', { class: 'finding' }, [
          field(farWords + ' from the tail', flight.at, function (value) { flight.at = value; keep(); }, { inputmode: 'decimal', 'data-flight-at': String(index) }),
          field('Depth left, ' + data.unit, flight.depth, function (value) { flight.depth = value; keep(); }, { inputmode: 'decimal', 'data-flight-depth': String(index) })]);
      })),
      button('Add a flight depth', function () { state.flights.push({ at: '', depth: '' }); keep(); show(); }, { id: 'add-flight' }),
      el('h2', {}, 'Findings'),
      el('div', {}, state.findings.map(function (finding, index) {
        var part = el('select', { 'aria-label': 'part' }, [el('option', { value: '' }, 'part')].concat(parts.map(function (name) { return el('option', { value: name, selected: finding.part === name }, name); })));
        part.addEventListener('change', function () { finding.part = part.value; keep(); });
        return el('div', { class: 'finding' }, [part,
          field(farWords + ' from the tail (if known)', finding.at, function (value) { finding.at = value; keep(); }, { inputmode: 'decimal' }),
          field('What', finding.text, function (value) { finding.text = value; keep(); }, { 'data-finding': String(index) })]);
      })),
      button('Add a finding', function () { state.findings.push({ part: '', at: '', text: '' }); keep(); show(); }, { id: 'add-finding' }),
      button('Back to the list', function () { go('list'); }, { class: 'main', id: 'more-back' })
    ];
  }

  function finishView() {
    var lacking = missing();
    var all = rows();
    var open = all.filter(function (point) { return !state.entries[point.id]; });
    var sure = false;
    return [
      lacking.length ? el('p', { class: 'warn', role: 'alert' }, '! Still missing: ' + lacking.join(' and ') + '. The text cannot be used without it.') : '',
      lacking.length ? button('Fill it in', function () { go('start'); }, { class: 'main' }) : '',
      open.length ? el('p', { class: 'warn' }, 'Open: ' + open.map(function (point) { return point.label; }).join(', ') + '. Open points stay unknown in the records; that is right if nobody looked.') : '',
      giveBack(blockText(), data.name + '-' + state.date + '.trough'),
      button('Back to the list', function () { go('list'); }),
      el('p', {}, 'The engineer puts this text into a file of the estate. Keep it on the phone until that is done.'),
      button('Delete everything on this phone', function (event) {
        if (!sure) { sure = true; event.target.textContent = 'Tap again to delete it for good'; return; }
        store.drop();
        state = fresh();
        show();
      }, { class: 'grave', id: 'delete' })
    ];
  }

  function show() {
    var views = { start: startView, list: listView, point: pointView, place: placeView, more: moreView, finish: finishView };
    var content = (views[state.view] || startView)();
    app.textContent = '';
    app.appendChild(banner());
    app.appendChild(el('div', { id: 'view', 'data-view': state.view }, content));
    app.appendChild(el('footer', { id: 'kept', role: 'status' }, store.words()));
  }

  show();
`;
