// The script of the as-fitted form, as text: what was really fitted, panel by panel, and the reline block that comes out of it.
// It follows the form kit in the same scope and is run under test in a real browser.

export const asFittedScript = String.raw`  var data = JSON.parse(document.getElementById('data').textContent);
  var app = document.getElementById('app');

  function fresh() {
    return { date: today(), meter: '', tonnes: '', by: '', temperature: '', lengths: {}, points: {}, offcuts: {}, remarks: {} };
  }

  var store = storeFor('troughline as fitted ' + data.key);
  var state = Object.assign(fresh(), store.load());

  function keep() {
    store.keep(state);
    document.getElementById('kept').textContent = store.words();
    var back = document.getElementById('back');
    back.textContent = '';
    back.appendChild(finish());
  }

  function signed(text) {
    var tidy = String(text).trim().replace(',', '.').replace('−', '-');
    return /^-?\d+(\.\d+)?$/.test(tidy) ? tidy : undefined;
  }

  function panelKey(run, panel) { return run.run + '/' + panel.panel; }

  function scopeLine(run) {
    var first = run.panels[0].panel, last = run.panels[run.panels.length - 1].panel;
    if (run.whole) return 'scope run ' + run.run;
    return first === last ? 'scope panel ' + first + ' of run ' + run.run : 'scope panels ' + first + ' to ' + last + ' of run ' + run.run;
  }

  function head(kind) {
    return kind + ' ' + data.qualified + ' ' + state.date + ' meter ' + (number(state.meter) === undefined ? '?' : plain(state.meter)) + ' h' + (data.tonnes && number(state.tonnes) !== undefined ? ' tonnes ' + plain(state.tonnes) + ' t' : '') + ' {';
  }

  function blocks() {
    var found = data.relines.map(function (reline, index) {
      var lines = [head('reline'), '  liner ' + reline.liner];
      reline.runs.forEach(function (run) { lines.push('  ' + scopeLine(run)); });
      if (signed(state.temperature) !== undefined) lines.push('  fitting temperature ' + signed(state.temperature) + ' degC');
      if (state.by.trim()) lines.push('  by ' + quoted(state.by));
      reline.points.forEach(function (point) {
        if (number(state.points[point.name]) !== undefined) lines.push('  ' + point.name + ' thickness ' + plain(state.points[point.name]) + ' mm');
      });
      reline.runs.forEach(function (run) {
        var lengths = run.panels.map(function (panel) { return state.lengths[panelKey(run, panel)]; });
        if (lengths.every(function (length) { return number(length) !== undefined; })) lines.push('  fitted run ' + run.run + ' panels ' + lengths.map(function (length) { return plain(length) + ' mm'; }).join(', '));
      });
      String(state.offcuts[index] || '').split(/[;\s]+/).forEach(function (length) {
        if (number(length)) lines.push('  offcut ' + plain(length) + ' mm');
      });
      if ((state.remarks[index] || '').trim()) lines.push('  finding liner ' + quoted(state.remarks[index]));
      lines.push('}');
      return lines.join('\n');
    });
    if (data.screw) found.push([head('screw change'), '  screw ' + data.screw].concat(state.by.trim() ? ['  by ' + quoted(state.by)] : [], ['}']).join('\n'));
    return found.join('\n\n') + '\n';
  }

  function lacking() {
    var found = [];
    if (!/^\d{4}-\d{2}-\d{2}$/.test(state.date)) found.push('the date');
    if (number(state.meter) === undefined) found.push('the hour meter');
    return found;
  }

  function finish() {
    var missing = lacking();
    var open = [];
    data.relines.forEach(function (reline) {
      reline.runs.forEach(function (run) {
        var blank = run.panels.filter(function (panel) { return number(state.lengths[panelKey(run, panel)]) === undefined; });
        if (blank.length) open.push('run ' + run.run + ': ' + blank.length + ' of ' + run.panels.length + ' lengths');
      });
    });
    return el('div', {}, [
      el('h2', {}, 'For the records'),
      missing.length ? el('p', { class: 'warn', role: 'alert' }, '! Still missing: ' + missing.join(' and ') + '. The text cannot be used without it.') : '',
      open.length ? el('p', { class: 'warn' }, 'Not measured yet: ' + open.join('; ') + '. Lengths of a run are written only when all are there.') : '',
      giveBack(blocks(), data.name + '-as-fitted-' + state.date + '.trough')
    ]);
  }

  function show() {
    app.textContent = '';
    app.appendChild(el('header', {}, [el('div', { class: 'who' }, data.pack), el('div', { class: 'look' }, 'AS FITTED'), el('div', { class: 'way' }, 'Write down what was measured, not what was planned.')]));
    var view = el('div', {}, [
      field('Date finished', state.date, function (value) { state.date = value; keep(); }, { type: 'date', id: 'date' }),
      field('Hour meter, h', state.meter, function (value) { state.meter = value; keep(); }, { id: 'meter', inputmode: 'decimal' }),
      data.tonnes ? field('Tonnes counter, t', state.tonnes, function (value) { state.tonnes = value; keep(); }, { id: 'tonnes', inputmode: 'decimal' }) : '',
      field('Liner temperature while fitting, °C', state.temperature, function (value) { state.temperature = value; keep(); }, { id: 'temperature', inputmode: 'text' }),
      field('Fitted by', state.by, function (value) { state.by = value; keep(); }, { id: 'by' })
    ].concat(data.relines.map(function (reline, index) {
      return el('section', {}, [el('h2', {}, reline.liner)].concat(
        reline.runs.map(function (run) {
          return el('div', {}, [el('h3', {}, 'Run ' + run.run + ': lengths as fitted, mm')].concat(run.panels.map(function (panel) {
            return field('Panel ' + panel.panel + ' (planned ' + panel.planned + ')', state.lengths[panelKey(run, panel)] || '', function (value) { state.lengths[panelKey(run, panel)] = value; keep(); }, { inputmode: 'decimal', 'data-panel': panelKey(run, panel) });
          })));
        }),
        reline.points.length ? [el('h3', {}, 'Thickness when new, mm')] : [],
        reline.points.map(function (point) {
          return field(point.name + ' at ' + point.at + ' m, ' + point.clock + ' (nominal ' + reline.thickness + ')', state.points[point.name] || '', function (value) { state.points[point.name] = value; keep(); }, { inputmode: 'decimal', 'data-point': point.name });
        }),
        [
          field('Offcuts kept, mm, with spaces between', state.offcuts[index] || '', function (value) { state.offcuts[index] = value; keep(); }, { 'data-offcuts': String(index) }),
          field('Remark', state.remarks[index] || '', function (value) { state.remarks[index] = value; keep(); }, {})
        ]
      ));
    }), [data.screw ? el('p', {}, 'Screw fitted: ' + data.screw) : '', el('div', { id: 'back' }), el('footer', { id: 'kept', role: 'status' }, '')]));
    app.appendChild(view);
    keep();
  }

  show();
`;
